import type { Settings } from "../../core/settings.ts";
import { deviationOf, impulseBetween, meanOf, type PlainForce } from "./plain-curve.ts";
import { quietRuns } from "./plain-quiet.ts";

/** A stretch of quiet standing and what the plate read in it. */
export interface PlainWindow {
  /** Times of its first and last sample. */
  readonly from: number;
  readonly to: number;
  /** Mean and standard deviation of its samples, newtons. */
  readonly mean: number;
  readonly deviation: number;
}

/** METHODS leaves open what a second is: here, at 1000 Hz, 1000 samples (not 1001), whose plain mean is the weight. */
function samplesOfASecond(rateHz: number, settings: Settings): number {
  return Math.round(settings.weighingSeconds * rateHz);
}

/**
 * The steadiest second of quiet standing among the samples `first` to `last` (METHODS §2): the one with the smallest
 * deviation. METHODS leaves open which of equally steady windows: here the latest, so that the integration is short.
 */
export function steadiestWindow(
  force: PlainForce,
  first: number,
  last: number,
  settings: Settings,
): PlainWindow | undefined {
  const count = samplesOfASecond(force.rateHz, settings);
  let best: PlainWindow | undefined;
  for (const quiet of quietRuns(force, first, last, settings)) {
    for (let start = quiet.first; start + count - 1 <= quiet.last; start++) {
      const inside = force.samples.slice(start, start + count);
      const deviation = deviationOf(inside);
      if (best !== undefined && deviation > best.deviation) continue;
      best = { from: start / force.rateHz, to: (start + count - 1) / force.rateHz, mean: meanOf(inside), deviation };
    }
  }
  return best;
}

/**
 * Body weight by momentum balance (METHODS §2): mean velocity is zero in both windows, so with P(t) = ∫F dt the weight
 * is the change of the mean of P over the change of the mean time. METHODS leaves open how a mean of P is taken: here
 * over its values at the samples of the window.
 */
export function balancedWeight(force: PlainForce, before: PlainWindow, after: PlainWindow): number {
  const meanImpulse = (window: PlainWindow): number => {
    const first = Math.round(window.from * force.rateHz);
    const last = Math.round(window.to * force.rateHz);
    const values: number[] = [];
    let impulse = impulseBetween(force, 0, window.from);
    for (let index = first; index <= last; index++) {
      values.push(impulse);
      if (index < last) impulse += impulseBetween(force, index / force.rateHz, (index + 1) / force.rateHz);
    }
    return meanOf(values);
  };
  const meanTime = (window: PlainWindow): number => (window.from + window.to) / 2;
  return (meanImpulse(after) - meanImpulse(before)) / (meanTime(after) - meanTime(before));
}
