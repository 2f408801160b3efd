import type { Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import { rateFindings } from "../recording/rate-findings.ts";
import type { Recording } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import { noOtherTrials } from "../weight/session-weighing.ts";
import { type AnalyzedTrial, analyzeTrial } from "./analyze-trial.ts";
import { draftTrials } from "./draft-trials.ts";

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
 * Every trial of one recording in memory, by the same steps as `analyzeSession` but alone: no session weight, no
 * sides. For programs that bring their own samples.
 */
export function analyzeRecording(
  recording: Recording,
  statement: RecordingStatement,
  settings: Settings,
): readonly AnalyzedTrial[] {
  const file = { path: "recording", bytes: new Uint8Array(0), sha256: "" };
  const { massKg, ...stated } = statement;
  const input = {
    folder: "",
    files: [],
    unreadable: [],
    description: {},
    descriptionFindings: [],
    stated,
  };
  const findings = rateFindings(recording.rateHz, settings);
  return draftTrials({ file, recording, findings }, input, settings).map((draft) =>
    analyzeTrial(draft, noOtherTrials, massKg, settings),
  );
}
