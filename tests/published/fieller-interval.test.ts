import { describe, expect, it } from "vitest";
import { ratioInterval } from "../../core/sides/ratio-interval.ts";
import { independentMoments, pairedMoments } from "../../core/sides/ratio-moments.ts";
import { twoSidedT } from "../../core/sides/student-t.ts";
import { covariance, mean } from "../../core/sides/trial-statistic.ts";

/** The figures below are printed to six decimals (CHECKS I1, computed by its author). */
const printed = 6;

// Bland and Altman 1986, Lancet 327:307–310, first readings (CHECKS H5).
const wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];

// CHECKS I1 (ii).
const y1 = [36, 44, 47, 42, 49, 39, 46, 31, 33, 48];
const y2 = [32, 39, 26, 35, 43, 27, 40, 37, 34, 29, 49, 42, 40];

const stated = (values: readonly number[]) => ({ values, statistic: mean(values) });

describe("Fieller's interval", () => {
  it("gives the paired example of peak expiratory flow", () => {
    const moments = pairedMoments(stated(wright), stated(mini), "mean");
    expect(moments.first).toBeCloseTo(450.352941, printed);
    expect(moments.second).toBeCloseTo(452.470588, printed);
    expect(moments.degreesOfFreedom).toBe(16);
    const { ratio, g, limits } = ratioInterval(moments, 0.95);
    expect(ratio).toBeCloseTo(0.99532, printed);
    expect(g).toBeCloseTo(0.0165213, 7);
    expect(limits?.low).toBeCloseTo(0.951375, printed);
    expect(limits?.high).toBeCloseTo(1.040117, printed);
  });

  it("gives the independent example with separate variances and degrees of freedom at the estimate", () => {
    const moments = independentMoments(stated(y1), stated(y2), "mean");
    expect(moments.degreesOfFreedom).toBeCloseTo(20.7932, 4);
    const { ratio, limits } = ratioInterval(moments, 0.95);
    expect(ratio).toBeCloseTo(1.140592, printed);
    expect(limits?.low).toBeCloseTo(0.983539, printed);
    expect(limits?.high).toBeCloseTo(1.324017, printed);
  });

  it("gives the independent example with a pooled variance", () => {
    const pooled = (9 * covariance(y1, y1) + 12 * covariance(y2, y2)) / 21;
    expect(pooled).toBeCloseTo(43.789377, printed);
    expect(twoSidedT(0.95, 21)).toBeCloseTo(2.079614, printed);
    const { g, limits } = ratioInterval(
      {
        first: mean(y1),
        second: mean(y2),
        varianceFirst: pooled / y1.length,
        varianceSecond: pooled / y2.length,
        covariance: 0,
        degreesOfFreedom: 21,
      },
      0.95,
    );
    expect(g).toBeCloseTo(0.011004, printed);
    expect(limits?.low).toBeCloseTo(0.982694, printed);
    expect(limits?.high).toBeCloseTo(1.323872, printed);
  });

  it("has no limits where the second number is too uncertain to divide by", () => {
    // By hand: t with 3 degrees of freedom is 3.182, so a second mean of 3 standard errors has g = 1.125.
    const { g, limits } = ratioInterval(
      { first: 5, second: 3, varianceFirst: 1, varianceSecond: 1, covariance: 0, degreesOfFreedom: 3 },
      0.95,
    );
    expect(g).toBeCloseTo(3.182446305 ** 2 / 9, 6);
    expect(limits).toBeUndefined();
  });
});
