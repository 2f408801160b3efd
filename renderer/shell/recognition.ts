import type { RecognisedTest } from "../../core/ground/recognised-test.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";

/** What the traces of some files look like, where nothing said so or what was said cannot be. */
export interface RecognitionOffer extends RecognisedTest {
  /** Other files that could be taken as the same test. */
  readonly others: readonly string[];
}

/** The offer for one file; undefined where its test is known, or its trials look like several tests. */
export function recognitionOffer(trials: readonly TrialResult[], file: string): RecognitionOffer | undefined {
  const own = recognisedOf(trials, file);
  if (own === undefined) return undefined;
  const files = new Set(trials.map((trial) => trial.file));
  files.delete(file);
  return { ...own, others: [...files].filter((other) => recognisedOf(trials, other)?.test === own.test) };
}

function recognisedOf(trials: readonly TrialResult[], file: string): RecognisedTest | undefined {
  const ofFile = trials.filter((trial) => trial.file === file);
  const asked = ofFile.filter(needsTest).flatMap((trial) => trial.recognised ?? []);
  const [first] = asked;
  return first !== undefined && ofFile.every((trial) => trial.recognised?.test === first.test) ? first : undefined;
}

function needsTest({ findings }: TrialResult): boolean {
  return findings.some(
    ({ code, severity }) => severity === "refusal" && (code === "test-not-stated" || code === "test-contradicts"),
  );
}
