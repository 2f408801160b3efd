import type { Comparison } from "./comparison.ts";
import { leadAveragedMoments } from "./lead-averaged-moments.ts";
import type { RatioMoments } from "./ratio-interval.ts";
import { independentMoments, pairedMoments } from "./ratio-moments.ts";
import type { TrialStatistic } from "./trial-statistic.ts";

/** What the spread of an index comes from. */
export type IndexTrials = Pick<Comparison, "legs" | "first" | "second" | "leads">;

/** True when there are enough trials to know their spread: two a side, three where both leads are averaged. */
export function spreadIsKnown({ first, second, leads }: IndexTrials): boolean {
  const least = leads === undefined ? 2 : 3;
  return first.values.length >= least && second.values.length >= least;
}

/**
 * The moments behind the interval of an index: paired within two-leg trials, within each lead where both leads are
 * averaged, independent between single-leg trials. The spread must be known.
 * @param extraTrials what they would be with that many more trials (a side) of the present spread
 */
export function indexMoments(trials: IndexTrials, statistic: TrialStatistic, extraTrials = 0): RatioMoments {
  const first = { values: trials.first.values, statistic: trials.first.mean ?? Number.NaN };
  const second = { values: trials.second.values, statistic: trials.second.mean ?? Number.NaN };
  if (trials.leads !== undefined) return leadAveragedMoments(first, second, trials.leads, statistic, extraTrials);
  return (trials.legs === "both" ? pairedMoments : independentMoments)(first, second, statistic, extraTrials);
}
