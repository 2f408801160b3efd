import type { Answer } from "./answer.ts";
import type { FindingCode } from "./finding-codes.ts";
import type { BytesFindings } from "./findings/bytes-findings.ts";
import type { EventsFindings } from "./findings/events-findings.ts";
import type { MeasureFindings } from "./findings/measures-findings.ts";
import type { RecordingFindings } from "./findings/recording-findings.ts";
import type { SessionFindings } from "./findings/session-findings.ts";
import type { SidesFindings } from "./findings/sides-findings.ts";
import type { StatedFindings } from "./findings/stated-findings.ts";
import type { TrialFindings } from "./findings/trial-findings.ts";
import type { WeightFindings } from "./findings/weight-findings.ts";
import type { MeasureId } from "./measures/catalogue.ts";
import type { Place } from "./place.ts";

/** How much a finding weighs: a note informs, a warning asks for eyes, a refusal means no measure could be made. */
export type Severity = "note" | "warning" | "refusal";

/**
 * The figures of each kind of finding. A kind is a code, or a code and, behind a slash, which of its cases it is:
 * "truncated", "time-uneven/jumps-back". Its sentence stands in `core/words`.
 */
export interface FindingFigures
  extends BytesFindings,
    RecordingFindings,
    StatedFindings,
    TrialFindings,
    EventsFindings,
    WeightFindings,
    MeasureFindings,
    SidesFindings,
    SessionFindings {
  /** Sentences made where the finding was. */
  readonly prose: { readonly message: string; readonly action: string };
}

export type FindingKind = keyof FindingFigures;

type CodeOf<Kind extends string> = Kind extends `${infer Code extends FindingCode}/${string}`
  ? Code
  : Kind extends FindingCode
    ? Kind
    : FindingCode;

interface Circumstances {
  readonly severity: Severity;
  readonly place: Place;
  /** Identifiers of the measures that could not be made because of it. */
  readonly removes: readonly MeasureId[];
  /** Statements of which each would settle it; empty where no statement can. */
  readonly answers: readonly Answer[];
}

export type FindingOf<Kind extends FindingKind> = Circumstances & {
  readonly kind: Kind;
  readonly code: CodeOf<Kind>;
  readonly figures: FindingFigures[Kind];
};

/**
 * Something a person should know about a recording, a trial or a session, as data without a sentence. Bad input becomes a
 * finding, never an exception: an exception is our own mistake.
 */
export type Finding = { readonly [Kind in FindingKind]: FindingOf<Kind> }[FindingKind];

/** Where a finding is, what it removes and what would settle it; each may be left out. */
interface OptionalParts {
  readonly place?: Place;
  readonly removes?: readonly MeasureId[];
  readonly answers?: readonly Answer[];
}

/** Makes a finding with its optional parts filled in. */
export function finding<Kind extends Exclude<FindingKind, "prose">>(
  kind: Kind,
  severity: Severity,
  figures: FindingFigures[Kind],
  { place = { at: "whole" }, removes = [], answers = [] }: OptionalParts = {},
): FindingOf<Kind> {
  const [code] = String(kind).split("/") as [CodeOf<Kind>];
  return { code, kind, severity, figures, place, removes, answers };
}

/** Makes a finding whose sentences are made where it is. */
export function proseFinding(
  code: FindingCode,
  severity: Severity,
  message: string,
  action: string,
  { where = "", removes = [] }: { readonly where?: string; readonly removes?: readonly MeasureId[] } = {},
): Finding {
  const place: Place = where === "" ? { at: "whole" } : { at: "words", words: where };
  return { code, kind: "prose", severity, figures: { message, action }, place, removes, answers: [] };
}

/** True when any of the findings refuses. */
export function isRefused(findings: readonly Finding[]): boolean {
  return findings.some((each) => each.severity === "refusal");
}
