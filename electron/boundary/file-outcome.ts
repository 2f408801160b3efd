import type { Finding } from "../../core/ground/finding.ts";
import type { FindingCode } from "../../core/ground/finding-codes.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";

/** How an imported file stands. `asks`: something must be stated before it can be analysed. */
export type FileOutcome = "understood" | "asks" | "refused";

/** Refusals that a person can settle by stating something the file does not say. */
const askingCodes: ReadonlySet<FindingCode> = new Set<FindingCode>([
  "rate-missing",
  "unit-not-stated",
  "columns-unclear",
  "limb-not-stated",
  "test-not-stated",
  "rate-contradicts",
  "unit-contradicts",
  "weight-implausible",
  "mass-missing",
  "decimal-mark-unclear",
  "layout-unclear",
  "time-uneven",
]);

/** A file that was read well and holds no trial that can be used is refused all the same. */
export function fileOutcome(findings: readonly Finding[], trials: readonly TrialResult[]): FileOutcome {
  const refusals = findings.filter((each) => each.severity === "refusal");
  if (refusals.length === 0) {
    return trials.length > 0 && trials.every((trial) => trial.status === "refused") ? "refused" : "understood";
  }
  return refusals.every(isAsking) ? "asks" : "refused";
}

function isAsking(finding: Finding): boolean {
  return finding.severity === "refusal" && askingCodes.has(finding.code);
}
