import { countOf, sentences } from "../ground/plain-words.ts";
import type { Settings } from "../settings/settings.ts";
import { english } from "../words/english.ts";
import type { Comparison, Interval, IntervalSource, SideSummary } from "./comparison.ts";
import { type IndexTrials, indexMoments, spreadIsKnown } from "./index-moments.ts";
import { positionsOfLead } from "./leading-legs.ts";
import { type PlateShareOfIndex, plateShareWords, widenedByPlates } from "./plate-share.ts";
import { type RatioMoments, ratioInterval } from "./ratio-interval.ts";
import type { SideTrials } from "./side-trials.ts";
import type { TrialStatistic } from "./trial-statistic.ts";

type Made = Pick<Comparison, "intervals" | "intervalNote" | "intervalFrom">;

/** Squared standard uncertainty of the mean of the trials, from their measurement uncertainties alone. */
function measurementVariance(trials: SideTrials): number | undefined {
  let sum = 0;
  for (const measure of trials.measures) {
    if (measure.uncertainty === undefined) return undefined;
    sum += measure.uncertainty ** 2;
  }
  return sum / trials.measures.length ** 2;
}

function measurementMoments(
  first: SideTrials,
  second: SideTrials,
  a = Number.NaN,
  b = Number.NaN,
): RatioMoments | undefined {
  const varianceFirst = measurementVariance(first);
  const varianceSecond = measurementVariance(second);
  if (varianceFirst === undefined || varianceSecond === undefined) return undefined;
  return { first: a, second: b, varianceFirst, varianceSecond, covariance: 0, degreesOfFreedom: Infinity };
}

const statisticNotes: Readonly<Record<TrialStatistic, string>> = {
  mean: "",
  median: " It is about the median and a little wide, with the limiting variance of a median.",
  best: " It is about the best trial and wide, with the variance of a single trial.",
};

function madeFrom(
  moments: RatioMoments,
  source: IntervalSource,
  note: string,
  second: SideSummary,
  share: PlateShareOfIndex | undefined,
  settings: Settings,
): Made {
  const levels = [...new Set([settings.statusConfidence, settings.drawnConfidence])];
  const intervals: Interval[] = [];
  const unbounded: string[] = [];
  for (const confidence of levels) {
    const { limits: ofTrials, ratio } = ratioInterval(moments, confidence);
    const limits = ofTrials && widenedByPlates(ofTrials, ratio, share, confidence);
    if (limits === undefined) unbounded.push(`${Number((100 * confidence).toFixed(1))} %`);
    else intervals.push({ confidence, low: 100 * limits.low, high: 100 * limits.high });
  }
  const open =
    unbounded.length === 0
      ? ""
      : ` Interval unbounded at ${unbounded.join(" and ")}: the ${english.limbs.bearer(second)} side is too uncertain to divide by.`;
  return {
    intervals,
    intervalNote: sentences(
      `${note}${open}`,
      share === undefined || intervals.length === 0 ? "" : plateShareWords(share),
    ),
    ...(intervals.length > 0 ? { intervalFrom: source } : {}),
  };
}

/** How the trials became an interval, in a sentence. */
function noteOf(trials: IndexTrials, degreesOfFreedom: number): string {
  const { legs, first, second, leads } = trials;
  if (leads !== undefined) {
    const left = positionsOfLead(leads, "left").length;
    return `Interval of a ratio after Fieller, paired within two-leg trials and averaged over ${left} with the left and ${leads.length - left} with the right leg leading; spread pooled within each lead, ${countOf(degreesOfFreedom, "degree")} of freedom.`;
  }
  if (legs === "both") return `Interval of a ratio after Fieller, paired within ${first.values.length} two-leg trials.`;
  return `Interval of a ratio after Fieller, from ${first.values.length} ${english.limbs.bearer(first)} and ${second.values.length} ${english.limbs.bearer(second)} trials (Welch–Satterthwaite). ${degreesOfFreedom.toFixed(1)} degrees of freedom.`;
}

function fewTrials({ first, second, leads }: IndexTrials): string {
  if (leads !== undefined) return "One trial with each leg leading";
  return first.values.length < 2 && second.values.length < 2 ? "One trial a side" : "One side has a single trial";
}

/**
 * The intervals of an index at the status and the drawn confidence (METHODS §8), with a sentence on how they were
 * made. Both summaries hold a value above zero.
 * @param share what the plates have in it; undefined where their gain cancels
 */
export function indexIntervals(
  compared: IndexTrials,
  trials: { readonly first: SideTrials; readonly second: SideTrials },
  statistic: TrialStatistic,
  share: PlateShareOfIndex | undefined,
  settings: Settings,
): Made {
  const { first, second } = compared;
  if (!spreadIsKnown(compared)) {
    const who = fewTrials(compared);
    const moments = measurementMoments(trials.first, trials.second, first.mean, second.mean);
    return moments === undefined
      ? { intervals: [], intervalNote: `${who} and no measurement uncertainty known: there is no interval.` }
      : madeFrom(
          moments,
          "measurement uncertainty",
          `${who}: the interval holds measurement uncertainty only, not the spread between trials.`,
          second,
          share,
          settings,
        );
  }
  const moments = indexMoments(compared, statistic);
  const note = `${noteOf(compared, moments.degreesOfFreedom)}${statisticNotes[statistic]}`;
  const source = compared.legs === "both" ? "paired trials" : "independent trials";
  return madeFrom(moments, source, note, second, share, settings);
}
