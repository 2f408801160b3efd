import type { TrialResult } from "./trial-result.ts";

/** True while a trial is held out of means because its weight differs, until a person keeps it (METHODS §2). */
export function isHeld({ held }: Pick<TrialResult, "held">): boolean {
  return held !== undefined;
}

/**
 * True for trials whose measures enter means and comparisons: not refused, not excluded by a person, no practice jump
 * and not held.
 */
export function countsInMeans(trial: Pick<TrialResult, "status" | "excluded" | "practice" | "held">): boolean {
  return trial.status !== "refused" && trial.excluded === undefined && trial.practice !== true && !isHeld(trial);
}
