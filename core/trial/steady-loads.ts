import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "./force-signal.ts";
import { meanAndDeviation } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";

/** A stretch in which the plates carry one steady load, whatever its size. */
export interface SteadyLoad {
  readonly span: SampleSpan;
  readonly newtons: number;
}

/**
 * Stretches of at least `quietSecondsAfter` in which the mean of every tenth of a second stays within the quiet band
 * around the first ones', at any level: unlike quiet standing, which lies near the recording's own steady load.
 */
export function steadyLoads(
  { force, rateHz }: ForceSignal,
  within: SampleSpan,
  settings: Settings,
): readonly SteadyLoad[] {
  const width = Math.max(2, Math.round(settings.steadyBlockSeconds * rateHz));
  const found: SteadyLoad[] = [];
  let start = within.start;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const close = (end: number): void => {
    if (end - start >= settings.quietSecondsAfter * rateHz) {
      found.push({ span: { start, end }, newtons: meanAndDeviation(force, start, end).mean });
    }
  };
  for (let from = within.start; from + width <= within.end; from += width) {
    const { mean, deviation } = meanAndDeviation(force, from, from + width);
    const band = settings.quietBandFraction * Math.abs(mean);
    const still = deviation <= band && mean > settings.emptyMinimumNewtons;
    if (still && Math.max(most, mean) - Math.min(least, mean) <= band) {
      least = Math.min(least, mean);
      most = Math.max(most, mean);
      continue;
    }
    close(from);
    start = still ? from : from + width;
    least = still ? mean : Number.POSITIVE_INFINITY;
    most = still ? mean : Number.NEGATIVE_INFINITY;
  }
  close(within.start + width * Math.floor((within.end - within.start) / width));
  return found;
}
