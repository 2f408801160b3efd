import type { Settings } from "../settings/settings.ts";

/** What stands for the trials of a side. */
export type TrialStatistic = "mean" | "best" | "median";

/**
 * The trial statistic of the settings.
 * @throws RangeError for a word the catalogue does not list: a mistake of ours
 */
export function trialStatisticOf(settings: Settings): TrialStatistic {
  const word = settings.trialStatistic;
  if (word === "mean" || word === "best" || word === "median") return word;
  throw new RangeError(`There is no trial statistic called "${word}".`);
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? Number.NaN) + upper) / 2;
}

/** What stands for the values of one side measured on its own; the best is the largest. */
export function standingValue(values: readonly number[], statistic: TrialStatistic): number {
  if (statistic === "mean") return mean(values);
  return statistic === "median" ? median(values) : Math.max(...values);
}

/** Covariance with n − 1; of a list with itself, its variance. */
export function covariance(first: readonly number[], second: readonly number[]): number {
  const meanFirst = mean(first);
  const meanSecond = mean(second);
  const sum = first.reduce((total, value, at) => total + (value - meanFirst) * ((second[at] ?? 0) - meanSecond), 0);
  return sum / (first.length - 1);
}

/**
 * Variance of the statistic as a part of the variance of single trials. Exact for the mean. For the median the limit
 * of many normal values, π/2n, and for the best trial the whole variance of one trial: both are never too small for
 * normal values, so intervals of median and best are a little too wide rather than too narrow.
 */
export function varianceFactor(statistic: TrialStatistic, trials: number): number {
  if (statistic === "mean") return 1 / trials;
  return statistic === "median" ? Math.min(1, Math.PI / (2 * trials)) : 1;
}
