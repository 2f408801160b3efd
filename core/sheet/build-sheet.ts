import { intervalCaution, standingCautions } from "../criteria/cautions.ts";
import { percentDigits } from "../ground/format-number.ts";
import { sentences } from "../ground/plain-words.ts";
import { engineVersion } from "../ground/version.ts";
import type { SessionResult } from "../result/session-result.ts";
import { type Settings, settingsHash } from "../settings/settings.ts";
import { absoluteValues } from "./absolute-values.ts";
import { attemptsTables } from "./attempts-table.ts";
import { criteriaToday } from "./criteria-today.ts";
import type { SheetBlock, SheetDocument } from "./document.ts";
import { findingsInWords } from "./findings-in-words.ts";
import { gateDetails } from "./gate-facts.ts";
import { kneeTable } from "./knee-table.ts";
import { methodsParagraph } from "./methods-paragraph.ts";
import { missingToday } from "./missing-today.ts";
import { athleteTitle, sessionFacts, sessionTitle } from "./session-facts.ts";
import { symmetryTables } from "./symmetry-tables.ts";
import { testedToday } from "./tested-today.ts";
import { withUnbrokenUnits } from "./unbroken-units.ts";
import { wholeBodyValues } from "./whole-body-values.ts";

/** What a sheet says of where the session is kept. */
export interface SheetOrigin {
  /** The code of the register's journal when the sheet was made; absent where no register keeps the session. */
  readonly journalCode?: string;
}

/**
 * The testing sheet of one session. The first page is in plain language for athlete and surgeon and ends with the
 * clinician's own lines; what follows gives the numbers, how sure they are and how they were made.
 */
export function buildSheet(session: SessionResult, settings: Settings, origin: SheetOrigin = {}): SheetDocument {
  const { description } = session;
  return withUnbrokenUnits({
    title: `Testing sheet: ${athleteTitle(description.athlete)}`,
    subtitle: sessionTitle(description),
    language: "en",
    banner: description.simulated
      ? "Simulated recordings of an invented athlete: nothing here was measured on a person."
      : "",
    blocks: [...pageInWords(session), { kind: "page-break" }, ...pagesInNumbers(session, settings)],
    footer: footerOf(session, settings, origin),
  });
}

function footerOf({ criteriaSet }: SessionResult, settings: Settings, { journalCode }: SheetOrigin): string {
  return [
    `Counterpoise ${engineVersion}`,
    `settings ${settingsHash(settings).slice(0, 12)}`,
    `criteria set “${criteriaSet.name}” version ${criteriaSet.version}`,
    ...(journalCode === undefined ? [] : [`journal ${journalCode}`]),
  ].join(" · ");
}

function pageInWords(session: SessionResult): readonly SheetBlock[] {
  return [
    sessionFacts(session),
    heading(2, "What was tested"),
    { kind: "list", tone: "plain", items: testedToday(session) },
    heading(2, "What the criteria say today"),
    ...criteriaToday(session),
    heading(2, "What is still missing"),
    { kind: "list", tone: "plain", items: missingToday(session) },
    heading(2, "How to read this sheet"),
    { kind: "paragraph", tone: "muted", text: sentences(...standingCautions, intervalCaution) },
    heading(2, "Decision of the treating clinician"),
    {
      kind: "write-in",
      items: [
        { name: "Decision", lines: 3 },
        { name: "Name", lines: 1 },
        { name: "Date", lines: 1 },
        { name: "Signature", lines: 1 },
      ],
    },
  ];
}

function pagesInNumbers(session: SessionResult, settings: Settings): readonly SheetBlock[] {
  const findings = findingsInWords(session);
  return [
    heading(2, "Numbers and how sure they are"),
    ...symmetryBlocks(session, settings),
    ...absoluteValues(session),
    ...wholeBodyValues(session, settings),
    heading(2, "Cautions and readings of the day"),
    { kind: "facts", items: gateDetails(session.description, session.gate) },
    ...kneeTable(session.knee),
    heading(2, "Every attempt"),
    ...attemptsTables(session),
    heading(2, "Findings"),
    findings.length === 0
      ? { kind: "paragraph", tone: "plain", text: "Nothing was found that a reader should know." }
      : { kind: "list", tone: "plain", items: findings },
    heading(2, "How the numbers were made"),
    { kind: "paragraph", tone: "plain", text: methodsParagraph(session, settings) },
  ];
}

function symmetryBlocks(session: SessionResult, settings: Settings): readonly SheetBlock[] {
  const [any] = session.comparisons;
  if (any === undefined) {
    const why =
      session.description.involved === undefined
        ? "The involved side is not stated, so the sides are not compared."
        : "No trial allows a comparison of the two sides.";
    return [{ kind: "paragraph", tone: "plain", text: why }];
  }
  const one = session.comparisons.find((each) => each.basis !== "plates") ?? any;
  const { involved } = session.description;
  const statuses = percentDigits(100 * settings.statusConfidence);
  const drawn = percentDigits(100 * settings.drawnConfidence);
  const drawing = `On the line: open dot the index, thick bar its ${statuses} % interval, thin bar the ${drawn} % interval, short tick 100 %`;
  const reading = {
    "involved-uninvolved": sentences(
      `Index: 100 × involved${involved === "left" || involved === "right" ? ` (${involved})` : ""} over uninvolved side; the ${statuses} % interval decides a status.`,
      `${drawing}, tall tick the threshold.`,
    ),
    "left-right": sentences("Index: 100 × left over right; nobody is injured, so no status is given.", `${drawing}.`),
    plates: "Which foot stood on which plate is not known: the values of each plate, no index.",
    "values-only": "Both knees are involved: the values of both sides, no index.",
  }[one.basis];
  return [{ kind: "paragraph", tone: "muted", text: reading }, ...symmetryTables(session, settings)];
}

function heading(level: 2 | 3, text: string): SheetBlock {
  return { kind: "heading", level, text };
}
