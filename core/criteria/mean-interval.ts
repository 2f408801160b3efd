import type { Settings } from "../settings/settings.ts";
import { twoSidedT } from "../sides/student-t.ts";
import { covariance, trialStatisticOf, varianceFactor } from "../sides/trial-statistic.ts";

/**
 * The t interval of what stands for some trials (METHODS §8), at the status confidence. Needs two values.
 * @param extraTrials what it would be with that many more trials of the present spread
 */
export function meanInterval(
  values: readonly number[],
  standing: number,
  settings: Settings,
  extraTrials = 0,
): { readonly confidence: number; readonly low: number; readonly high: number } {
  const trials = values.length + extraTrials;
  const confidence = settings.statusConfidence;
  const factor = varianceFactor(trialStatisticOf(settings), trials);
  const half = twoSidedT(confidence, trials - 1) * Math.sqrt(factor * covariance(values, values));
  return { confidence, low: standing - half, high: standing + half };
}
