import type { Settings } from "../settings/settings.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * The steadiest `weighingSeconds` of quiet standing (METHODS §2), the latest of windows that are steady alike; where every
 * stretch is shorter, the longest stretch.
 * @returns undefined when there is no quiet standing.
 */
export function weighingWindow(
  total: Float64Array,
  rateHz: number,
  quiet: readonly SampleSpan[],
  settings: Settings,
): SampleSpan | undefined {
  const width = Math.round(settings.weighingSeconds * rateHz);
  const long = quiet.filter((span) => span.end - span.start >= width);
  if (long.length === 0) {
    return quiet.reduce<SampleSpan | undefined>(
      (best, span) => (best === undefined || span.end - span.start >= best.end - best.start ? span : best),
      undefined,
    );
  }
  return steadiest(total, long, width);
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
    });
  }
  return { start: latest, end: latest + width };
}

/** Visits every window of a stretch with its variance. */
function eachWindow(
  total: Float64Array,
  span: SampleSpan,
  width: number,
  visit: (start: number, variance: number) => void,
): void {
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
    visit(start, Math.max(0, squares / width - (sum / width) ** 2));
    const leaves = total[start]! - level;
    sum -= leaves;
    squares -= leaves * leaves;
  }
}
