import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import { type ForceSignal, meanAndDeviation } from "./force-signal.ts";

/** How far the foot of each flank reaches beyond the line of its steep part, seconds. */
export interface EdgeFeet {
  readonly takeoff: number;
  /** Absent where no landing follows. */
  readonly touchdown?: number;
}

/**
 * Force leaves a plate, and meets it, along a flank that ends in a corner. A moving average rounds the corner: the line
 * through the flank between 0.3 and 0.7 of the standing load then reaches the empty level long before the force does.
 * @returns undefined where the flight has no middle to read the empty level from, or a flank is not there.
 */
export function edgeFeet(
  total: ForceSignal,
  cut: JumpCut,
  steadyLoad: number,
  settings: Settings,
): EdgeFeet | undefined {
  const { force, rateHz } = total;
  const { start, end } = cut.flight;
  const quarter = Math.floor((end - start) / 4);
  if (cut.kind === "landing" || end - start - 2 * quarter < 4) return undefined;
  const { mean, deviation } = meanAndDeviation(force, start + quarter, end - quarter);
  const level = mean + Math.max(settings.contactMinimumNewtons, settings.contactSd * deviation);
  const load = steadyLoad - mean;
  const middle = (start + end) >> 1;
  const foot = (step: 1 | -1): number | undefined => {
    const limit = Math.round(settings.smoothedFlankSeconds * rateHz) + (end - start);
    let previous = middle;
    const crossing = (newtons: number): number | undefined => {
      for (let index = previous; Math.abs(index - middle) < limit; index += step) {
        const next = force[index + step];
        if (next === undefined) return undefined;
        if (next < newtons) continue;
        previous = index;
        const here = force[index]!;
        return index + (step * (newtons - here)) / (next - here);
      }
      return undefined;
    };
    const left = crossing(level);
    const low = crossing(mean + settings.smoothedFlankFrom * load);
    const high = crossing(mean + settings.smoothedFlankTo * load);
    if (left === undefined || low === undefined || high === undefined) return undefined;
    const corner =
      low - (high - low) * (settings.smoothedFlankFrom / (settings.smoothedFlankTo - settings.smoothedFlankFrom));
    return (step * (corner - left)) / rateHz;
  };
  const takeoff = foot(-1);
  const touchdown = cut.landed ? foot(1) : undefined;
  if (takeoff === undefined || (cut.landed && touchdown === undefined)) return undefined;
  return { takeoff, ...(touchdown === undefined ? {} : { touchdown }) };
}
