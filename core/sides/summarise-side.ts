import type { Measure } from "../measures/measure.ts";
import type { SideSummary } from "./comparison.ts";
import type { SideTrials } from "./side-trials.ts";
import { mean, median, type TrialStatistic } from "./trial-statistic.ts";

function stands(values: readonly number[], statistic: TrialStatistic, best: number): number {
  if (statistic === "mean") return mean(values);
  return statistic === "median" ? median(values) : (values[best] ?? Number.NaN);
}

/** Position of the best trial: the largest value, in two-leg trials the largest sum of both limbs. */
export function bestTrial(first: readonly Measure[], other: readonly Measure[] = []): number {
  const sums = first.map((measure, at) => measure.value + (other[at]?.value ?? 0));
  return sums.indexOf(Math.max(...sums));
}

/** The trials of one side with the number that stands for them. */
export function summariseSide(trials: SideTrials, statistic: TrialStatistic, best: number): SideSummary {
  const values = trials.measures.map((measure) => measure.value);
  if (values.length === 0) return { side: trials.side, values };
  const perBodyMass = trials.perBodyMass.flatMap((measure) => (measure === undefined ? [] : [measure.value]));
  return {
    side: trials.side,
    values,
    mean: stands(values, statistic, best),
    ...(perBodyMass.length === values.length ? { meanPerBodyMass: stands(perBodyMass, statistic, best) } : {}),
  };
}
