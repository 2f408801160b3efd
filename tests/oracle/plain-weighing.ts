import type { Settings } from "../../core/settings.ts";
import type { PlainRun } from "./plain-contacts.ts";
import { impulseBetween, meanAndDeviationOf, meanOf, type PlainForce } from "./plain-curve.ts";

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

/** Every second of some stretches of quiet standing, in order of time. */
function secondsOf(force: PlainForce, stretches: readonly PlainRun[], settings: Settings): PlainWindow[] {
  const count = samplesOfASecond(force.rateHz, settings);
  const windows: PlainWindow[] = [];
  for (const quiet of stretches) {
    for (let start = quiet.first; start + count - 1 <= quiet.last; start++) {
      const read = meanAndDeviationOf(force.samples, start, count);
      windows.push({ from: start / force.rateHz, to: (start + count - 1) / force.rateHz, ...read });
    }
  }
  return windows;
}

/**
 * The steadiest second of some stretches of quiet standing (METHODS §2): the one with the smallest deviation. METHODS
 * leaves open which of equally steady windows: here the latest.
 */
export function steadiestWindow(
  force: PlainForce,
  stretches: readonly PlainRun[],
  settings: Settings,
): PlainWindow | undefined {
  let best: PlainWindow | undefined;
  for (const window of secondsOf(force, stretches, settings)) {
    if (best === undefined || window.deviation <= best.deviation) best = window;
  }
  return best;
}

/**
 * The second that weighs after a landing from an empty plate. METHODS asks for "quiet standing after landing" and leaves
 * open which second of it: here the first that is nearly as steady as the steadiest (the setting says how nearly), by
 * the means of 50 ms that also tell quiet standing. Less than a millionth of a newton is rounding.
 */
export function firstSteadyWindow(
  force: PlainForce,
  stretches: readonly PlainRun[],
  settings: Settings,
): PlainWindow | undefined {
  const half = Math.floor(Math.max(2, Math.round(settings.quietBlockSeconds * force.rateHz)) / 2);
  const means = force.samples.map((_, index) =>
    meanOf(force.samples.slice(Math.max(0, index - half), index + half + 1)),
  );
  const smooth = secondsOf({ ...force, samples: means }, stretches, settings);
  const least = Math.max(1e-6, Math.min(...smooth.map((window) => window.deviation)));
  const first = smooth.findIndex((window) => window.deviation <= settings.weighingAlike * least);
  return secondsOf(force, stretches, settings)[first];
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
