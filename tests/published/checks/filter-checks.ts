import { designButterworth, singlePassCutoffHz } from "../../../core/recording/filter-design.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

const lastDecimal = 1e-12;
const singlePass = "recomputed from the bilinear transform of a second-order Butterworth section";
const dualPass = "Winter 2009, Biomechanics and Motor Control of Human Movement, p 69 (rule read); values recomputed";

type Section = ReturnType<typeof designButterworth>;

/** |H|² of one pass at a frequency, from its definition. */
function powerGain({ b0, b1, b2, a1, a2 }: Section, rateHz: number, frequencyHz: number): number {
  const angle = (2 * Math.PI * frequencyHz) / rateHz;
  const squared = (c0: number, c1: number, c2: number): number =>
    (c0 + c1 * Math.cos(angle) + c2 * Math.cos(2 * angle)) ** 2 +
    (c1 * Math.sin(angle) + c2 * Math.sin(2 * angle)) ** 2;
  return squared(b0, b1, b2) / squared(1, a1, a2);
}

const corrected = (rateHz: number, cutoffHz: number): Section =>
  designButterworth(rateHz, singlePassCutoffHz(rateHz, cutoffHz));

function coefficients(
  name: string,
  source: string,
  design: () => Section,
  expected: Readonly<Record<keyof Section, number>>,
): PublishedCheck[] {
  return (["b0", "b1", "b2", "a1", "a2"] as const).map((letter) => ({
    check: `${name}, coefficient ${letter}`,
    source,
    expected: expected[letter],
    unit: "1",
    tolerance: lastDecimal,
    ours: () => design()[letter],
  }));
}

export const filterChecks: CheckGroup = {
  subject: "Butterworth filter",
  checks: [
    ...coefficients("one pass, cut-off a tenth of the rate", singlePass, () => designButterworth(1000, 100), {
      b0: 0.067455273889,
      b1: 0.134910547778,
      b2: 0.067455273889,
      a1: -1.14298050254,
      a2: 0.412801598096,
    }),
    {
      check: "two passes, 50 Hz at 1000 Hz: warped cut-off tan(π·fc/fs) of one pass",
      source: dualPass,
      expected: 0.19742694971,
      unit: "1",
      tolerance: lastDecimal,
      ours: () => Math.tan((Math.PI * singlePassCutoffHz(1000, 50)) / 1000),
    },
    {
      check: "the correction itself, (√2 − 1)^¼ on the warped frequency",
      source: dualPass,
      expected: 0.802243,
      unit: "1",
      tolerance: 5e-7,
      ours: () => Math.tan((Math.PI * 50) / 1000) / Math.tan((Math.PI * singlePassCutoffHz(1000, 50)) / 1000),
    },
    ...coefficients("two passes, 50 Hz at 1000 Hz", dualPass, () => corrected(1000, 50), {
      b0: 0.029569074716,
      b1: 0.059138149432,
      b2: 0.029569074716,
      a1: -1.458103860461,
      a2: 0.576380159326,
    }),
    {
      check: "two passes, 50 Hz at 1000 Hz: |H(50 Hz)|² of one of them",
      source: dualPass,
      expected: Math.SQRT1_2,
      unit: "1",
      tolerance: 5e-7,
      ours: () => powerGain(corrected(1000, 50), 1000, 50),
    },
    ...[200, 500, 600, 1000, 2000].map((rateHz) => ({
      check: `both passes together at the nominal 50 Hz, sampled at ${rateHz} Hz: half the power`,
      source: dualPass,
      expected: 0.5,
      unit: "1",
      tolerance: lastDecimal,
      ours: () => powerGain(corrected(rateHz, 50), rateHz, 50) ** 2,
    })),
  ],
};
