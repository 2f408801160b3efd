import type { Settings } from "../../core/settings/settings.ts";
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
 * The second that weighs (METHODS §2, and what METHODS.md of the core settles): the steadiest, by the smallest deviation,
 * finds the calm standing around it, every second next to it and to each other whose deviation is within `weighingAlike`
 * of its own. Momentum over that has a line of least squares. The second taken leaves that line least: the mean of what
 * it has beside the line, and what it gains beside it until the movement, as the root of the sum of squares. Where
 * seconds are still alike, the one nearest the movement.
 */
export function weighingSecond(
  force: PlainForce,
  stretches: readonly PlainRun[],
  settings: Settings,
  side: "before the movement" | "after the movement",
): PlainWindow | undefined {
  const { samples, rateHz } = force;
  const windows = secondsOf(force, stretches, settings);
  let steadiest: PlainWindow | undefined;
  for (const window of windows) {
    if (steadiest === undefined || window.deviation <= steadiest.deviation) steadiest = window;
  }
  if (steadiest === undefined) return undefined;
  const firstOf = (window: PlainWindow): number => Math.round(window.from * rateHz);
  const lastOf = (window: PlainWindow): number => Math.round(window.to * rateHz);
  const chosen = firstOf(steadiest);
  const stretch = stretches.find((run) => run.first <= chosen && chosen <= run.last)!;
  const own = windows.filter((window) => firstOf(window) >= stretch.first && lastOf(window) <= stretch.last);
  const still = stillFraction * steadiest.mean;
  const isCalm = (window: PlainWindow): boolean =>
    window.deviation <= Math.hypot(settings.weighingAlike * steadiest.deviation, still);
  const at = own.findIndex((window) => firstOf(window) === chosen);
  let from = at;
  while (from > 0 && isCalm(own[from - 1]!)) from--;
  let to = at;
  while (to < own.length - 1 && isCalm(own[to + 1]!)) to++;
  const calm = own.slice(from, to + 1);

  const start = firstOf(calm[0]!);
  const count = lastOf(calm.at(-1)!) - start + 1;
  const level = meanOf(samples.slice(start, start + count));
  const momentum = [0];
  for (let index = 1; index < count; index++) {
    const two = samples[start + index - 1]! + samples[start + index]!;
    momentum.push(momentum[index - 1]! + (two / 2 - level) / rateHz);
  }
  const rest = besideLeastSquares(momentum);
  let best: PlainWindow | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const window of side === "before the movement" ? [...calm].reverse() : calm) {
    const first = firstOf(window) - start;
    const last = lastOf(window) - start;
    const mean = meanOf(rest.slice(first, last + 1));
    const gainedASample = (rest[last]! - rest[first]!) / (last - first);
    const middle = start + (first + last) / 2;
    const away = side === "before the movement" ? stretch.last - middle : middle - stretch.first;
    const off = Math.max(still, Math.hypot(mean, gainedASample * away));
    if (off < least) {
      least = off;
      best = window;
    }
  }
  return best;
}

/** Below this part of the weight a difference is rounding. */
const stillFraction = 1e-9;

/** What values have beside their straight line of least squares. */
function besideLeastSquares(values: readonly number[]): number[] {
  const centre = (values.length - 1) / 2;
  const mean = meanOf(values);
  let along = 0;
  let square = 0;
  for (const [index, value] of values.entries()) {
    along += (index - centre) * (value - mean);
    square += (index - centre) ** 2;
  }
  return values.map((value, index) => value - mean - (along / square) * (index - centre));
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
