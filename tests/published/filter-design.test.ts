import { expect, test } from "vitest";
import { designButterworth, singlePassCutoffHz } from "../../core/recording/filter-design.ts";

/** The published coefficients carry twelve decimals. */
const lastDecimal = 1e-12;

/** |H|² of a section at a frequency, from its definition. */
function powerGain(section: ReturnType<typeof designButterworth>, rateHz: number, frequencyHz: number): number {
  const { b0, b1, b2, a1, a2 } = section;
  const angle = (2 * Math.PI * frequencyHz) / rateHz;
  const squared = (c0: number, c1: number, c2: number): number =>
    (c0 + c1 * Math.cos(angle) + c2 * Math.cos(2 * angle)) ** 2 +
    (c1 * Math.sin(angle) + c2 * Math.sin(2 * angle)) ** 2;
  return squared(b0, b1, b2) / squared(1, a1, a2);
}

test("a single pass at a tenth of the sampling rate has the published coefficients", () => {
  // CHECKS F1, recomputed there: b = 0.067455273889, 0.134910547778, 0.067455273889; a = 1, -1.142980502540, 0.412801598096.
  const { b0, b1, b2, a1, a2 } = designButterworth(1000, 100);
  const expected = [0.067455273889, 0.134910547778, 0.067455273889, -1.14298050254, 0.412801598096];
  for (const [index, value] of [b0, b1, b2, a1, a2].entries()) {
    expect(Math.abs(value - expected[index]!)).toBeLessThan(lastDecimal);
  }
});

test("two passes at 50 Hz and 1000 Hz have the published coefficients after correction on the warped frequency", () => {
  // CHECKS F2, recomputed there after Winter 2009, p 69: wc = 0.197426949710; a0 = a2 = 0.029569074716,
  // a1 = 0.059138149432, b1 = 1.458103860461, b2 = -0.576380159326 (Winter's letters and signs).
  const cutoffHz = singlePassCutoffHz(1000, 50);
  expect(Math.abs(Math.tan((Math.PI * cutoffHz) / 1000) - 0.19742694971)).toBeLessThan(lastDecimal);
  const { b0, b1, b2, a1, a2 } = designButterworth(1000, cutoffHz);
  const expected = [0.029569074716, 0.059138149432, 0.029569074716, -1.458103860461, 0.576380159326];
  for (const [index, value] of [b0, b1, b2, a1, a2].entries()) {
    expect(Math.abs(value - expected[index]!)).toBeLessThan(lastDecimal);
  }
});

test("both passes together are 3 dB down at the nominal cut-off, at any rate", () => {
  // CHECKS F2: |H(50)|² of one pass = 0.707107, so that two passes have a power gain of one half.
  for (const rateHz of [200, 500, 600, 1000, 2000]) {
    const section = designButterworth(rateHz, singlePassCutoffHz(rateHz, 50));
    expect(powerGain(section, rateHz, 50) ** 2).toBeCloseTo(0.5, 12);
  }
});
