import type { Settings } from "../settings.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";

/** On which side of the movement the quiet standing lies. */
export type QuietSide = "before" | "after";

/** Deviations of force below this are rounding, newtons. */
const roundingNewtons = 1e-6;

/**
 * The steadiest `weighingSeconds` of quiet standing (METHODS §2); where every stretch is shorter, the longest stretch.
 * The shorter the integration, the smaller its drift: before the movement the latest of windows that are steady alike
 * is taken; after it, where nothing else pins the velocity, the earliest whose standard deviation is within
 * `weighingAlike` of the steadiest (on simulated drop jumps that took a third off the error of the impulse height).
 * That deviation is of the 50 ms means that tell quiet standing: beside noise and hum a body that still settles looks
 * as steady as one that stands.
 * @returns undefined when there is no quiet standing.
 */
export function weighingWindow(
  total: Float64Array,
  rateHz: number,
  quiet: readonly SampleSpan[],
  settings: Settings,
  side: QuietSide = "before",
): SampleSpan | undefined {
  const width = Math.round(settings.weighingSeconds * rateHz);
  const long = quiet.filter((span) => span.end - span.start >= width);
  if (long.length === 0) {
    return quiet.reduce<SampleSpan | undefined>(
      (best, span) => (best === undefined || span.end - span.start >= best.end - best.start ? span : best),
      undefined,
    );
  }
  return side === "before" ? steadiest(total, long, width) : firstSteady(total, rateHz, long, width, settings);
}

/** The latest of the windows with the least variance. */
function steadiest(total: Float64Array, long: readonly SampleSpan[], width: number): SampleSpan {
  let latest = long[0]!.start;
  let least = Number.POSITIVE_INFINITY;
  for (const span of long) {
    eachWindow(total, span, width, (start, variance) => {
      if (variance <= least) {
        least = variance;
        latest = start;
      }
      return true;
    });
  }
  return { start: latest, end: latest + width };
}

/** The first window whose 50 ms means are nearly as steady as those of the steadiest. */
function firstSteady(
  total: Float64Array,
  rateHz: number,
  long: readonly SampleSpan[],
  width: number,
  settings: Settings,
): SampleSpan {
  const means = runningMean(total, Math.max(2, Math.round(settings.quietBlockSeconds * rateHz)));
  let least = Number.POSITIVE_INFINITY;
  for (const span of long) {
    eachWindow(means, span, width, (_start, variance) => {
      least = Math.min(least, variance);
      return true;
    });
  }
  const enough = Math.max(least, roundingNewtons ** 2) * settings.weighingAlike ** 2;
  let earliest = long[0]!.start;
  for (const span of long) {
    const found = !eachWindow(means, span, width, (start, variance) => {
      if (variance > enough) return true;
      earliest = start;
      return false;
    });
    if (found) break;
  }
  return { start: earliest, end: earliest + width };
}

/** Visits every window of a stretch with its variance until told to stop; false when it was. */
function eachWindow(
  total: Float64Array,
  span: SampleSpan,
  width: number,
  visit: (start: number, variance: number) => boolean,
): boolean {
  // Counted from the stretch's own level, and anew after every width, so that the running sums keep their digits: what
  // a restless part left in them would decide between windows that are perfectly still.
  const level = total[(span.start + span.end) >> 1]!;
  let sum = 0;
  let squares = 0;
  for (let start = span.start; start + width <= span.end; start += 1) {
    if ((start - span.start) % width === 0) {
      sum = 0;
      squares = 0;
      for (let index = start; index < start + width; index += 1) {
        const value = total[index]! - level;
        sum += value;
        squares += value * value;
      }
    } else {
      const joins = total[start + width - 1]! - level;
      sum += joins;
      squares += joins * joins;
    }
    if (!visit(start, Math.max(0, squares / width - (sum / width) ** 2))) return false;
    const leaves = total[start]! - level;
    sum -= leaves;
    squares -= leaves * leaves;
  }
  return true;
}
