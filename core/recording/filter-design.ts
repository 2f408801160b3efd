import Fili from "fili";

/** One second-order low-pass section; a0 is 1 and the signs are those of SciPy (y = b·x − a·y). */
export interface FilterSection {
  readonly b0: number;
  readonly b1: number;
  readonly b2: number;
  readonly a1: number;
  readonly a2: number;
}

/** A filter run forward and backward passes twice. No setting: it is what makes the filter free of lag. */
const passes = 2;

/**
 * Two passes lower the −3 dB point of a second-order Butterworth filter; C = (2^(1/passes) − 1)^(1/4) = 0.802243
 * brings it back (Winter, Biomechanics and Motor Control of Human Movement, 4th ed. 2009, p 69; Robertson et al.,
 * Research Methods in Biomechanics, 2nd ed., p 288). /. No setting: an identity of the filter.
 */
const passCorrection = (2 ** (1 / passes) - 1) ** 0.25;

/** True where a cut-off can be realised: below half the sampling rate. */
export function canFilter(rateHz: number, cutoffHz: number): boolean {
  return cutoffHz > 0 && cutoffHz < rateHz / 2;
}

/**
 * Cut-off in hertz that one pass needs so that two passes together are 3 dB down at `cutoffHz`. The correction divides
 * the warped frequency tan(π fc/fs), not fc itself.
 */
export function singlePassCutoffHz(rateHz: number, cutoffHz: number): number {
  return (rateHz / Math.PI) * Math.atan(Math.tan((Math.PI * cutoffHz) / rateHz) / passCorrection);
}

/** Second-order Butterworth low-pass for a single pass, designed by Fili through the bilinear transform. */
export function designButterworth(rateHz: number, cutoffHz: number): FilterSection {
  const [section] = new Fili.CalcCascades().lowpass({
    order: 1,
    characteristic: "butterworth",
    Fs: rateHz,
    Fc: cutoffHz,
  });
  const { a, b, k } = section!;
  return { b0: k * b[0], b1: k * b[1], b2: k * b[2], a1: a[0], a2: a[1] };
}
