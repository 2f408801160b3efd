import type { Settings } from "../settings/settings.ts";
import { meanAndDeviation, meanOf } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { weighingWindow } from "../trial/weighing-window.ts";

/** On which side of the movement the quiet standing lies. */
export type QuietSide = "before" | "after";

/** The second that weighs, and the calm standing around it that vouches for it. */
export interface WeighingSecond {
  readonly window: SampleSpan;
  /** At least the window itself. */
  readonly calm: SampleSpan;
}

/**
 * Differences below this part of weight are rounding: of seconds that are still alike the one nearest the movement
 * weighs. No setting: rounding of doubles.
 */
const roundingFraction = 1e-9;

/**
 * The second of quiet standing that weighs the athlete (METHODS §2). The deviation of force says little about slow sway,
 * so of all seconds next to the steadiest that are nearly as steady (`weighingAlike`) the one is taken that moves least
 * against the whole of them: momentum over this calm standing has a straight line of least squares, and what the second
 * has beside it on the average, and gains or loses beside it, decide how far velocity would be off at the movement.
 * @returns undefined when there is no quiet standing.
 */
export function weighingSecond(
  total: Float64Array,
  rateHz: number,
  quiet: readonly SampleSpan[],
  settings: Settings,
  side: QuietSide,
): WeighingSecond | undefined {
  const steadiest = weighingWindow(total, rateHz, quiet, settings);
  const stretch = quiet.find((span) => steadiest && span.start <= steadiest.start && steadiest.end <= span.end);
  if (steadiest === undefined || stretch === undefined) return undefined;
  const calm = calmAround(total, steadiest, stretch, settings);
  const width = steadiest.end - steadiest.start;
  const { momentum, sums } = restOfMomentum(total, rateHz, calm);
  const rounding = roundingFraction * Math.abs(total[steadiest.start]!);
  let best = 0;
  let least = Number.POSITIVE_INFINITY;
  for (let start = 0; start + width <= momentum.length; start += 1) {
    const beside = (sums[start + width]! - sums[start]!) / width;
    const gained = (momentum[start + width - 1]! - momentum[start]!) / (width - 1);
    const middle = calm.start + start + (width - 1) / 2;
    const samples = side === "before" ? stretch.end - 1 - middle : middle - stretch.start;
    // Both parts together are no smaller than the larger of them; their root is taken where that may decide.
    if (Math.max(Math.abs(beside), Math.abs(gained * samples)) > least) continue;
    const off = Math.max(rounding, Math.hypot(beside, gained * samples));
    if (side === "before" ? off > least : off >= least) continue;
    least = off;
    best = start;
  }
  return { window: { start: calm.start + best, end: calm.start + best + width }, calm };
}

/** Every second next to the steadiest, and next to each other, that is nearly as steady. */
function calmAround(total: Float64Array, steadiest: SampleSpan, stretch: SampleSpan, settings: Settings): SampleSpan {
  const width = steadiest.end - steadiest.start;
  const { mean, deviation } = meanAndDeviation(total, steadiest.start, steadiest.end);
  const most = (settings.weighingAlike * deviation) ** 2 + (roundingFraction * mean) ** 2;
  const reach = (direction: 1 | -1): number => {
    let { start, end } = steadiest;
    let sum = 0;
    let squares = deviation * deviation * (width - 1);
    while (direction === 1 ? end < stretch.end : start > stretch.start) {
      const joins = total[direction === 1 ? end : start - 1]! - mean;
      const leaves = total[direction === 1 ? start : end - 1]! - mean;
      sum += joins - leaves;
      squares += joins * joins - leaves * leaves;
      if ((squares - (sum * sum) / width) / (width - 1) > most) break;
      start += direction;
      end += direction;
    }
    return direction === 1 ? end : start;
  };
  return { start: reach(-1), end: reach(1) };
}

/** Momentum at each sample beside its own straight line of least squares (N·s), and its running sums. */
function restOfMomentum(total: Float64Array, rateHz: number, span: SampleSpan) {
  const count = span.end - span.start;
  const mean = meanOf(total, span.start, span.end);
  const momentum = new Float64Array(count);
  const sums = new Float64Array(count + 1);
  const centre = (count - 1) / 2;
  let sum = 0;
  let covariance = 0;
  for (let index = 1; index < count; index += 1) {
    const at = span.start + index;
    momentum[index] = momentum[index - 1]! + ((total[at - 1]! + total[at]!) / 2 - mean) / rateHz;
    sum += momentum[index]!;
    covariance += (index - centre) * momentum[index]!;
  }
  const slope = covariance / ((count * (count * count - 1)) / 12);
  for (let index = 0; index < count; index += 1) {
    momentum[index] = momentum[index]! - sum / count - slope * (index - centre);
    sums[index + 1] = sums[index]! + momentum[index]!;
  }
  return { momentum, sums };
}
