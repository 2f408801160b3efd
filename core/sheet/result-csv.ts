import type { DocumentTrial } from "./document-shapes.ts";
import type { ResultDocument } from "./result-document.ts";

/**
 * Columns of the long table, one row a measure. `excluded` and `held` hold the reason and `practice` the word, all empty
 * for trials that may count; `findings` the codes of what must be said about the trial, separated by spaces; `sha256` the
 * recording's. While feet are in doubt a limb's value has no `side`, and `plate` says by its place from 1 which plate it
 * was made on.
 */
export const resultCsvColumns = [
  "file",
  "trial",
  "test",
  "limb",
  "status",
  "excluded",
  "held",
  "practice",
  "id",
  "side",
  "value",
  "unit",
  "uncertainty",
  "findings",
  "sha256",
  "engine",
  "settings",
  "plate",
] as const;

/**
 * The measures of a result document as CSV: a header row, then one row a measure in the document's order. A trial
 * without any measure (refused) has one row with its findings and empty cells from `id` to `uncertainty`, and for `plate`. Point as decimal mark, ASCII minus, numbers in the
 * shortest form that reads back to the same value; quoting as in RFC 4180, lines end with a line feed.
 *
 * `engine` and `settings` (the first twelve digits of the settings hash) stand on every row, so that rows of several
 * tables can be joined without losing how they were made.
 */
export function resultCsv(document: ResultDocument): string {
  const made = [document.engine.version, document.settings.hash.slice(0, 12)];
  const rows = document.trials.flatMap((trial) => trialRows(trial, made));
  return [resultCsvColumns, ...rows].map((cells) => `${cells.join(",")}\n`).join("");
}

function trialRows(trial: DocumentTrial, made: readonly string[]): readonly (readonly string[])[] {
  const head = [
    textCell(trial.file),
    String(trial.trial),
    trial.test ?? "",
    trial.limb ?? "",
    trial.status,
    textCell(trial.excluded?.reason ?? ""),
    textCell(trial.held?.reason ?? ""),
    trial.practice ? "practice" : "",
  ];
  const tail = [[...new Set(trial.findings.map(({ code }) => code))].join(" "), trial.sha256 ?? "", ...made];
  if (trial.measures.length === 0) return [[...head, "", "", "", "", "", ...tail, ""]];
  return trial.measures.map(({ id, side, plate, value, unit, uncertainty }) => [
    ...head,
    id,
    side ?? "",
    String(value),
    unit,
    uncertainty === undefined ? "" : String(uncertainty),
    ...tail,
    plate === undefined ? "" : String(plate),
  ]);
}

/**
 * A cell whose text came from outside (file names, reasons). A spreadsheet would run a cell that begins with one of
 * = + - @, a tab or a return as a formula, so such a cell gets an apostrophe in front; the JSON document keeps the text as it came.
 */
function textCell(text: string): string {
  const guarded = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(guarded) ? `"${guarded.replaceAll('"', '""')}"` : guarded;
}
