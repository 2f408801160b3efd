import type { Settings } from "../../core/settings.ts";
import { deviationOf, impulseBetween, type PlainForce } from "./plain-curve.ts";

/** A stretch of quiet standing and what the plate read in it. */
export interface PlainWindow {
  readonly from: number;
  readonly to: number;
  /** Mean of the straight lines between the samples, newtons. */
  readonly mean: number;
  /** Of the samples. */
  readonly deviation: number;
}

function windowOf(force: PlainForce, first: number, last: number): PlainWindow {
  const from = first / force.rateHz;
  const to = last / force.rateHz;
  return {
    from,
    to,
    mean: impulseBetween(force, from, to) / (to - from),
    deviation: deviationOf(force.samples.slice(first, last + 1)),
  };
}

/** The steadiest second of the samples `first` to `last` (METHODS §2): the one with the smallest deviation. */
export function steadiestWindow(
  force: PlainForce,
  first: number,
  last: number,
  settings: Settings,
): PlainWindow | undefined {
  const length = Math.round(settings.weighingSeconds * force.rateHz);
  let best: PlainWindow | undefined;
  for (let start = first; start + length <= last; start++) {
    const deviation = deviationOf(force.samples.slice(start, start + length + 1));
    if (best === undefined || deviation < best.deviation) best = windowOf(force, start, start + length);
  }
  return best;
}

/**
 * Body weight by momentum balance (METHODS §2): mean velocity is zero in both windows, so with P(t) = ∫F dt the weight
 * is the change of the mean of P over the change of the mean time.
 */
export function balancedWeight(force: PlainForce, before: PlainWindow, after: PlainWindow): number {
  const meanImpulse = (window: PlainWindow): number => {
    // P is quadratic between samples, so Simpson's rule is exact.
    let area = 0;
    let sum = impulseBetween(force, 0, window.from);
    const first = Math.round(window.from * force.rateHz);
    const last = Math.round(window.to * force.rateHz);
    for (let index = first; index < last; index++) {
      const start = index / force.rateHz;
      const end = (index + 1) / force.rateHz;
      const middle = sum + impulseBetween(force, start, (start + end) / 2);
      const next = sum + impulseBetween(force, start, end);
      area += ((sum + 4 * middle + next) / 6) * (end - start);
      sum = next;
    }
    return area / (window.to - window.from);
  };
  const meanTime = (window: PlainWindow): number => (window.from + window.to) / 2;
  return (meanImpulse(after) - meanImpulse(before)) / (meanTime(after) - meanTime(before));
}
