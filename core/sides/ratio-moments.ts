import { degreesOfFreedomAtRatio, type RatioMoments } from "./ratio-interval.ts";
import { covariance, type TrialStatistic, varianceFactor } from "./trial-statistic.ts";

/** One side for the interval: the values of its trials and the number that stands for them. */
export interface StatedSide {
  readonly values: readonly number[];
  readonly statistic: number;
}

/**
 * Moments of two sides measured in the same trials (two-leg trials): with covariance, n − 1 degrees of freedom.
 * Needs two trials. `extraTrials` asks what they would be with that many more trials of the present spread.
 */
export function pairedMoments(
  first: StatedSide,
  second: StatedSide,
  statistic: TrialStatistic,
  extraTrials = 0,
): RatioMoments {
  const trials = first.values.length + extraTrials;
  const factor = varianceFactor(statistic, trials);
  return {
    first: first.statistic,
    second: second.statistic,
    varianceFirst: factor * covariance(first.values, first.values),
    varianceSecond: factor * covariance(second.values, second.values),
    covariance: factor * covariance(first.values, second.values),
    degreesOfFreedom: trials - 1,
  };
}

/**
 * Moments of two sides measured in trials of their own (single-leg trials): no covariance, degrees of freedom by
 * Welch–Satterthwaite at the estimate. Needs two trials a side.
 */
export function independentMoments(
  first: StatedSide,
  second: StatedSide,
  statistic: TrialStatistic,
  extraTrials = 0,
): RatioMoments {
  const trialsFirst = first.values.length + extraTrials;
  const trialsSecond = second.values.length + extraTrials;
  const varianceFirst = varianceFactor(statistic, trialsFirst) * covariance(first.values, first.values);
  const varianceSecond = varianceFactor(statistic, trialsSecond) * covariance(second.values, second.values);
  return {
    first: first.statistic,
    second: second.statistic,
    varianceFirst,
    varianceSecond,
    covariance: 0,
    degreesOfFreedom: degreesOfFreedomAtRatio(
      first.statistic / second.statistic,
      { variance: varianceFirst, trials: trialsFirst },
      { variance: varianceSecond, trials: trialsSecond },
    ),
  };
}
