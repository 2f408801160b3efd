import type { Settings } from "../settings/settings.ts";

/** The sampling rate behind printed stamps. */
export interface EvenRate {
  readonly rateHz: number;
  /** Half-width in hertz of the rates that the stamps cannot tell apart, because they are rounded. */
  readonly toleranceHz: number;
  /** False when no rate explains all stamps within their rounding: a sample may be missing among them. */
  readonly explainsAll: boolean;
  /** True for a whole number of hertz, as people set it; else the rate is what the stamps average to. */
  readonly isWhole: boolean;
}

/**
 * Whole rates are tried from the roundest on: multiples of 1000 Hz, of 500 Hz, and so on. No setting: these are the
 * round numbers.
 */
const roundness = [1000, 500, 250, 200, 100, 50, 25, 20, 10, 5, 2, 1] as const;

/**
 * Most whole rates of one roundness that are tried; more means that the recording is a few samples long. No setting:
 * it spares time.
 */
const mostTried = 40;

/**
 * Rate of an even time base. Printed stamps are rounded, so several rates explain them (800 Hz printed to the
 * millisecond over 0.37 s: 798 to 802 Hz); the roundest whole number among those is taken, else the quotient itself.
 *
 * Where step and printed resolution are of one size a missing sample hides among the rounded steps. Around the true
 * line rounded stamps stay within one resolution; a missing sample moves all later ones by more. So there the rate must
 * also explain every single stamp.
 * @param step typical step in units of the stamps.
 * @param scale seconds per unit of the stamps.
 */
export function findEvenRate(
  stamps: Float64Array,
  scale: number,
  step: number,
  resolution: number,
  settings: Settings,
): EvenRate {
  const steps = stamps.length - 1;
  const length = stamps[steps]! - stamps[0]!;
  const quotientHz = steps / (length * scale);
  const toleranceHz = quotientHz * (resolution / length + 1e-9);
  const isCoarse = isRoundingCoarse(step, resolution);
  const slack = settings.timeUnevenFraction * step;
  const explains = (rateHz: number, extra: number): boolean =>
    !isCoarse || spread(stamps, 1 / (rateHz * scale)) <= resolution * (1 + extra) + slack;
  for (const unit of roundness) {
    const nearest = Math.round(quotientHz / unit);
    const reach = Math.min(Math.ceil(toleranceHz / unit), mostTried);
    for (let offset = 0; offset <= reach; offset++) {
      for (const multiple of offset === 0 ? [nearest] : [nearest - offset, nearest + offset]) {
        const rateHz = multiple * unit;
        if (rateHz <= 0 || Math.abs(rateHz - quotientHz) > toleranceHz) continue;
        if (explains(rateHz, 1e-6)) return { rateHz, toleranceHz, explainsAll: true, isWhole: true };
      }
    }
  }
  if (!isCoarse) return { rateHz: quotientHz, toleranceHz, explainsAll: true, isWhole: false };
  const fittedHz = 1 / (leastSquaresStep(stamps) * scale);
  // The fitted slope tilts by about the resolution over the square root of the number of stamps.
  const explainsAll = explains(fittedHz, 2 / Math.sqrt(stamps.length));
  return { rateHz: fittedHz, toleranceHz, explainsAll, isWhole: false };
}

/** True when rounding moves the steps noticeably: not at 1000 Hz to the millisecond (each step is exact), but at 800 Hz. */
export function isRoundingCoarse(step: number, resolution: number): boolean {
  return resolution >= step / 4 && !isMultiple(step, resolution);
}

/** True when a step is a whole number of printed places, so that rounding cannot move it. */
export function isMultiple(step: number, resolution: number): boolean {
  if (resolution === 0) return false;
  const ratio = step / resolution;
  return ratio > 0.5 && Math.abs(ratio - Math.round(ratio)) <= 0.01;
}

/** Distance between the highest and the lowest stamp around a line of the given step. */
function spread(stamps: Float64Array, step: number): number {
  let lowest = 0;
  let highest = 0;
  for (let row = 1; row < stamps.length; row++) {
    const distance = stamps[row]! - stamps[0]! - row * step;
    if (distance < lowest) lowest = distance;
    else if (distance > highest) highest = distance;
  }
  return highest - lowest;
}

function leastSquaresStep(stamps: Float64Array): number {
  const middle = (stamps.length - 1) / 2;
  let numerator = 0;
  let denominator = 0;
  for (let row = 0; row < stamps.length; row++) {
    numerator += (row - middle) * (stamps[row]! - stamps[0]!);
    denominator += (row - middle) ** 2;
  }
  return numerator / denominator;
}
