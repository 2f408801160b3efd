import type { Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import { rateFindings } from "../recording/rate-findings.ts";
import type { Recording } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import { noOtherTrials } from "../weight/session-weighing.ts";
import type { AnalyzedTrial } from "./analyze-trial.ts";
import { analyzeDrafts, draftRead } from "./file-trials.ts";

/** What must be stated about a recording that does not come from a file. */
export interface RecordingStatement {
  readonly test: TestKind;
  readonly limb: Limb;
  /** Used where nobody stands still, and checked against the weighing otherwise. */
  readonly massKg?: number;
  /** Height of the box, metres, and the leg that steps off it first; only for tests that start from a box. */
  readonly dropHeightMetres?: number;
  readonly leadingLeg?: Side;
}

/**
 * Every trial of one recording in memory, by the two steps of a file that `analyzeSession` takes but alone: no session
 * weight, no sides. For programs that bring their own samples.
 */
export function analyzeRecording(
  recording: Recording,
  statement: RecordingStatement,
  settings: Settings,
): readonly AnalyzedTrial[] {
  const file = { path: "recording", bytes: new Uint8Array(0), sha256: "" };
  const { massKg, ...stated } = statement;
  const session = { folder: "", description: {}, descriptionFindings: [], stated };
  const findings = rateFindings(recording.rateHz, settings);
  const drafted = draftRead({ file, recording, findings }, session, settings);
  // The mass weighs and is held against the weighing; it decides nothing about how the recording is cut.
  const weighed = { ...session, stated: massKg === undefined ? stated : { ...stated, massKg } };
  return analyzeDrafts(drafted, noOtherTrials, weighed, settings);
}
