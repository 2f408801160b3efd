import { type Finding, finding } from "../ground/finding.ts";
import type { Place } from "../ground/place.ts";
import type { DecimalDoubt } from "./column-marks.ts";
import type { DetectedDialect, Dialect } from "./dialect.ts";
import type { Header } from "./header.ts";
import { lineNumberAt } from "./lines.ts";
import { isNumberInAnyMarks } from "./number-marks.ts";
import type { DecimalMark } from "./number-text.ts";
import { isCompleteRow, type NumericBody, type OddLine, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { TextBytes } from "./text-bytes.ts";

/** The file stops inside a UTF-16 character. */
export function cutCharacter(): Finding {
  return finding("truncated/inside-character", "warning", {}, { place: { at: "end of the file" } });
}

/** Says that the encoding was guessed, with the line that made it doubtful. */
export function encodingFindings(text: TextBytes): Finding[] {
  const { encoding } = text;
  if (text.encodingFrom === "pattern") {
    return [finding("encoding-guessed/no-mark", "note", { encoding }, { place: { at: "whole file" } })];
  }
  if (text.firstDoubtfulByte < 0) return [];
  const line = lineNumberAt(text.bytes, text.firstDoubtfulByte);
  const place: Place = { at: "line", line };
  return encoding === "UTF-8"
    ? [finding("encoding-guessed/not-as-marked", "note", { line }, { place })]
    : [finding("encoding-guessed/not-utf-8", "note", { line }, { place })];
}

/** A mark may be a decimal or a thousands mark, and nothing in the file settles it. */
export function decimalMarkUnclear({ line, cell, column }: DecimalDoubt): Finding {
  const position = column + 1;
  return finding(
    "decimal-mark-unclear/two-readings",
    "refusal",
    { cell, column: position, ...(line === 0 ? {} : { line }) },
    {
      place: line === 0 ? { at: "column", column: { position, name: "" } } : { at: "line", line },
      answers: [{ decimalMark: "point" }, { decimalMark: "comma" }],
    },
  );
}

/** Columns with different decimal marks, or none with the one that was stated. */
export function decimalMarkFindings({ dialect, againstStated }: DetectedDialect, stated?: DecimalMark): Finding[] {
  const columnsWith = (mark: DecimalMark): number[] =>
    dialect.marks.flatMap(({ decimal }, column) =>
      dialect.kinds[column] === "number" && decimal === mark ? [column + 1] : [],
    );
  const [point, comma] = [columnsWith("point"), columnsWith("comma")];
  if (stated !== undefined && againstStated.length > 0 && columnsWith(stated).length === 0) {
    const columns = againstStated.map((column) => column + 1);
    return [finding("decimal-marks-differ/from-stated", "warning", { stated, columns })];
  }
  if (point.length === 0 || comma.length === 0) return [];
  return [finding("decimal-marks-differ/each-its-own", "note", { point, comma })];
}

/** What is doubtful about the lines above the rows. */
export function headerFindings(
  header: readonly string[],
  dialect: Dialect,
  { misfit, doubtful }: Pick<Header, "misfit" | "doubtful">,
): Finding[] {
  const findings: Finding[] = [];
  if (misfit !== undefined) {
    findings.push(
      finding(
        "columns-unclear/names-misfit",
        "warning",
        { line: misfit.line, nameCount: misfit.count, columnCount: dialect.columnCount },
        { place: { at: "line", line: misfit.line }, answers: [{ asks: "columns" }] },
      ),
    );
  }
  const strayRows = header.flatMap((line, index) => (isOtherRow(line, dialect) ? [index + 1] : []));
  const [firstStray] = strayRows;
  if (firstStray !== undefined) {
    findings.push(otherColumnCount(firstStray, strayRows.length, dialect));
  } else if (doubtful !== undefined) {
    findings.push(
      finding(
        "lines-skipped/above-first-row",
        "warning",
        { line: doubtful },
        { place: { at: "line", line: doubtful } },
      ),
    );
  }
  const facts = header.flatMap((line, index) => (isRowOfWordAndNumber(line, dialect) ? [index + 1] : []));
  const [firstFact] = facts;
  if (firstFact !== undefined) {
    findings.push(finding("lines-skipped/facts", "note", { lines: facts }, { place: { at: "line", line: firstFact } }));
  }
  return findings;
}

/** Above the names of a table with a column of words, "mass;69,4" has the shape of a row. */
function isRowOfWordAndNumber(line: string, dialect: Dialect): boolean {
  if (!dialect.kinds.includes("text") || isCommentLine(line, dialect.delimiter)) return false;
  return isCompleteRow(rowFields(line, dialect), dialect);
}

/** A header line that is a row of numbers of another width: a recording before the recording. */
export function isOtherRow(line: string, dialect: Dialect): boolean {
  if (isBlankLine(line) || isCommentLine(line, dialect.delimiter)) return false;
  const fields = rowFields(line, dialect);
  return fields.length > 1 && fields.length !== dialect.columnCount && fields.every(isNumberInAnyMarks);
}

/** One such row may be a stray and is left out; of several nobody knows which are the recording. */
function otherColumnCount(line: number, count: number, { columnCount }: Dialect): Finding {
  const figures = { line, others: count - 1, columnCount };
  const place: Place = { at: "line", line };
  return count > 1
    ? finding("columns-unclear/other-width", "refusal", figures, { place })
    : finding("columns-unclear/other-width-left-out", "warning", figures, { place });
}

/** No setting: it shortens a sentence. */
const linesNamed = 3;

/** Rows of another width inside the recording: a sample is missing or torn apart. */
function oddInside(odd: readonly OddLine[], dialect: Dialect): Finding {
  return finding(
    "columns-unclear/widths-inside",
    "refusal",
    {
      columnCount: dialect.columnCount,
      odd: odd.slice(0, linesNamed).map(({ line, fieldCount }) => ({ line, fieldCount })),
      others: Math.max(0, odd.length - linesNamed),
    },
    { place: { at: "line", line: odd[0]!.line } },
  );
}

/** A row that a comment mark takes out of the recording. */
function rowsBehindComments(odd: readonly OddLine[]): Finding {
  const { line } = odd[0]!;
  return finding(
    "lines-skipped/commented-rows",
    "refusal",
    { line, others: odd.length - 1 },
    { place: { at: "line", line } },
  );
}

/** A line behind the rows that says something in words. */
export function isWords(odd: OddLine): boolean {
  return odd.numberCount === 0 || odd.isComment || /^\s*"?\p{L}{2}/u.test(odd.text);
}

/** What is doubtful about the rows: other widths, a last line cut short, summaries, lines without numbers. */
export function bodyFindings(body: NumericBody, dialect: Dialect): Finding[] {
  const findings: Finding[] = [];
  const inside = body.oddLines.filter((odd) => odd.rowsBefore < body.rows);
  const commented = inside.filter((odd) => odd.isComment);
  const torn = inside.filter((odd) => !odd.isComment);
  if (torn.length > 0) findings.push(oddInside(torn, dialect));
  if (commented.length > 0) findings.push(rowsBehindComments(commented));
  const behind = body.oddLines.filter((odd) => odd.rowsBefore >= body.rows);
  const numbersBehind = behind.filter((odd) => !isWords(odd));
  const [onlyOdd] = numbersBehind;
  if (onlyOdd !== undefined) {
    const isLastLine = onlyOdd.line === body.lineCount || behind.at(-1) === onlyOdd;
    if (numbersBehind.length === 1 && isLastLine && onlyOdd.fieldCount < dialect.columnCount) {
      const { line, fieldCount } = onlyOdd;
      const figures = { line, fieldCount, columnCount: dialect.columnCount };
      findings.push(finding("truncated/columns-missing", "warning", figures, { place: { at: "line", line } }));
    } else {
      findings.push(otherColumnCount(onlyOdd.line, numbersBehind.length, dialect));
    }
  }
  const [summary] = body.summaryLines;
  if (summary !== undefined) {
    const { line, label } = summary;
    const figures = { line, label, others: body.summaryLines.length - 1 };
    findings.push(finding("lines-skipped/summary", "note", figures, { place: { at: "line", line } }));
  }
  const words = [
    ...behind.filter(isWords).map((odd) => odd.line),
    ...body.footerLines.map((footer) => footer.line),
    ...body.blankLinesInside,
  ].sort((one, other) => one - other);
  const [firstWords] = words;
  if (firstWords !== undefined) {
    const figures = { line: firstWords, others: words.length - 1 };
    findings.push(finding("lines-skipped/no-sample", "note", figures, { place: { at: "line", line: firstWords } }));
  }
  return findings;
}
