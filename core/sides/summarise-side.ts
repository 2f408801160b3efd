import type { Side } from "../ground/limb.ts";
import type { Measure } from "../measures/measure.ts";
import type { SideSummary } from "./comparison.ts";
import { positionsOfLead } from "./leading-legs.ts";
import type { LeadTrials, SideTrials, TrialsOfBothSides } from "./side-trials.ts";
import { mean, median, type TrialStatistic } from "./trial-statistic.ts";

function stands(values: readonly number[], statistic: TrialStatistic, best: number): number {
  if (statistic === "mean") return mean(values);
  return statistic === "median" ? median(values) : (values[best] ?? Number.NaN);
}

/** Position of the best trial: the largest value, in two-leg trials the largest sum of both limbs. */
function bestTrial(first: readonly Measure[], other: readonly Measure[] = []): number {
  const sums = first.map((measure, at) => measure.value + (other[at]?.value ?? 0));
  return sums.indexOf(Math.max(...sums));
}

/** The trials of one side with the number that stands for them. */
function summariseSide(trials: SideTrials, statistic: TrialStatistic, best: number): KnownSide {
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

type KnownSide = SideSummary & { readonly side: Side };

interface BothSummaries {
  readonly first: KnownSide;
  readonly second: KnownSide;
}

/** Both sides with the number that stands for each. The best two-leg trial is the same trial for both. */
export function summariseSides(trials: TrialsOfBothSides, paired: boolean, statistic: TrialStatistic): BothSummaries {
  const bestFirst = bestTrial(trials.first.measures, paired ? trials.second.measures : []);
  const bestSecond = paired ? bestFirst : bestTrial(trials.second.measures);
  return {
    first: summariseSide(trials.first, statistic, bestFirst),
    second: summariseSide(trials.second, statistic, bestSecond),
  };
}

function averaged(whole: KnownSide, left: KnownSide, right: KnownSide): KnownSide {
  const { side, values } = whole;
  const half = (a: number | undefined, b: number | undefined) =>
    a === undefined || b === undefined ? undefined : (a + b) / 2;
  const standing = half(left.mean, right.mean);
  const perBodyMass = half(left.meanPerBodyMass, right.meanPerBodyMass);
  return {
    side,
    values,
    ...(standing === undefined ? {} : { mean: standing }),
    ...(perBodyMass === undefined ? {} : { meanPerBodyMass: perBodyMass }),
  };
}

/** Both sides, each the mean of what stands for its trials with the left and with the right leg leading. */
export function summariseLeads(trials: LeadTrials, statistic: TrialStatistic): BothSummaries {
  const ofLead = (lead: Side): BothSummaries => {
    const at = positionsOfLead(trials.leads, lead);
    const pick = (side: SideTrials): SideTrials => ({
      side: side.side,
      measures: at.map((index) => side.measures[index]!),
      perBodyMass: at.map((index) => side.perBodyMass[index]),
    });
    return summariseSides({ ...trials, first: pick(trials.first), second: pick(trials.second) }, true, statistic);
  };
  const whole = summariseSides(trials, true, statistic);
  const left = ofLead("left");
  const right = ofLead("right");
  return {
    first: averaged(whole.first, left.first, right.first),
    second: averaged(whole.second, left.second, right.second),
  };
}
