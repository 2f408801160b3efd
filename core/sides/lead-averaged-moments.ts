import type { Side } from "../ground/limb.ts";
import { positionsOfLead } from "./leading-legs.ts";
import type { RatioMoments } from "./ratio-interval.ts";
import type { StatedSide } from "./ratio-moments.ts";
import { mean, type TrialStatistic, varianceFactor } from "./trial-statistic.ts";

/** Sum of products of deviations, each from the mean of its own lead. */
function productsWithinLeads(first: readonly number[], second: readonly number[], leads: readonly Side[]): number {
  return (["left", "right"] as const).reduce((total, side) => {
    const at = positionsOfLead(leads, side);
    const pick = (values: readonly number[]) => at.map((index) => values[index] ?? Number.NaN);
    const [x, y] = [pick(first), pick(second)];
    const [meanX, meanY] = [mean(x), mean(y)];
    return x.reduce((sum, value, index) => sum + (value - meanX) * ((y[index] ?? Number.NaN) - meanY), total);
  }, 0);
}

/**
 * Moments of two sides measured in the same two-leg trials, each side the mean of its two lead means. The leading leg
 * shifts what a trial gives but hardly how it scatters, so the covariance of left and right is pooled within the leads
 * with n − 2 degrees of freedom; a mean of two means of nᴸ and nᴿ trials then has (1/nᴸ + 1/nᴿ)/4 of it. With normal
 * trials of one covariance, first − ratio·second over its standard error is Student's t exactly, so Fieller's interval
 * holds its confidence whatever the leads do to the means. Taking all trials as one sample instead would count the
 * shift between the leads as scatter, and would follow whichever leg led more often.
 *
 * Needs a trial of either lead and three in all. `extraTrials` asks what the moments would be with that many more of
 * the present spread, each with the leg leading that led less often.
 */
export function leadAveragedMoments(
  first: StatedSide,
  second: StatedSide,
  leads: readonly Side[],
  statistic: TrialStatistic,
  extraTrials = 0,
): RatioMoments {
  const counts = { left: positionsOfLead(leads, "left").length, right: positionsOfLead(leads, "right").length };
  const pooled = (x: readonly number[], y: readonly number[]) => productsWithinLeads(x, y, leads) / (leads.length - 2);
  for (let extra = 0; extra < extraTrials; extra += 1) counts[counts.left < counts.right ? "left" : "right"] += 1;
  const factor = (varianceFactor(statistic, counts.left) + varianceFactor(statistic, counts.right)) / 4;
  return {
    first: first.statistic,
    second: second.statistic,
    varianceFirst: factor * pooled(first.values, first.values),
    varianceSecond: factor * pooled(second.values, second.values),
    covariance: factor * pooled(first.values, second.values),
    degreesOfFreedom: counts.left + counts.right - 2,
  };
}
