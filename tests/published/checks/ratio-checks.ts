import { degreesOfFreedomAtRatio, ratioInterval } from "../../../core/sides/ratio-interval.ts";
import { independentMoments, pairedMoments } from "../../../core/sides/ratio-moments.ts";
import { twoSidedT } from "../../../core/sides/student-t.ts";
import { covariance, mean } from "../../../core/sides/trial-statistic.ts";
import type { CheckGroup, PublishedCheck } from "./published-check.ts";

/** Figures printed to six decimals. */
const sixDecimals = 5e-7;
const computed = "computed by hand from Fieller's formula (no published figures were found)";
const peakFlow = "peak expiratory flow, first readings (data: Bland and Altman 1986, Lancet 327:307–310)";

const wright = [494, 395, 516, 434, 476, 557, 413, 442, 650, 433, 417, 656, 267, 478, 178, 423, 427];
const mini = [512, 430, 520, 428, 500, 600, 364, 380, 658, 445, 432, 626, 260, 477, 259, 350, 451];
const first = [36, 44, 47, 42, 49, 39, 46, 31, 33, 48];
const second = [32, 39, 26, 35, 43, 27, 40, 37, 34, 29, 49, 42, 40];

const stated = (values: readonly number[]) => ({ values, statistic: mean(values) });
const paired = () => pairedMoments(stated(wright), stated(mini), "mean");
const independent = () => independentMoments(stated(first), stated(second), "mean");
const pooledVariance = () => (9 * covariance(first, first) + 12 * covariance(second, second)) / 21;
const pooled = () => ({
  first: mean(first),
  second: mean(second),
  varianceFirst: pooledVariance() / first.length,
  varianceSecond: pooledVariance() / second.length,
  covariance: 0,
  degreesOfFreedom: 21,
});

const check = (
  name: string,
  source: string,
  expected: number,
  tolerance: number,
  ours: () => number,
): PublishedCheck => ({ check: name, source, expected, unit: "1", tolerance, ours });

const limit = (moments: ReturnType<typeof paired>, end: "low" | "high"): number =>
  ratioInterval(moments, 0.95).limits?.[end] ?? Number.NaN;

export const ratioChecks: CheckGroup = {
  subject: "Ratio of two means",
  checks: [
    check(`paired, ${peakFlow}: mean, first instrument`, computed, 450.352941, sixDecimals, () => paired().first),
    check("the same: mean, second instrument", computed, 452.470588, sixDecimals, () => paired().second),
    check("the same: ratio", computed, 0.99532, sixDecimals, () => ratioInterval(paired(), 0.95).ratio),
    check("the same: Fieller's g", computed, 0.0165213, 5e-8, () => ratioInterval(paired(), 0.95).g),
    check("the same: 95 % interval, lower limit", computed, 0.951375, sixDecimals, () => limit(paired(), "low")),
    check("the same: 95 % interval, upper limit", computed, 1.040117, sixDecimals, () => limit(paired(), "high")),
    check(
      "ten and thirteen independent values: ratio",
      computed,
      1.140592,
      sixDecimals,
      () => ratioInterval(independent(), 0.95).ratio,
    ),
    check(
      "the same: Welch–Satterthwaite degrees of freedom at the estimate",
      computed,
      20.7932,
      5e-5,
      () => independent().degreesOfFreedom,
    ),
    check("the same, separate variances: lower limit", computed, 0.983539, sixDecimals, () =>
      limit(independent(), "low"),
    ),
    check("the same, separate variances: upper limit", computed, 1.324017, sixDecimals, () =>
      limit(independent(), "high"),
    ),
    check("the same: pooled variance", computed, 43.789377, sixDecimals, pooledVariance),
    check(
      "the same, pooled variance: Fieller's g",
      computed,
      0.011004,
      sixDecimals,
      () => ratioInterval(pooled(), 0.95).g,
    ),
    check("the same, pooled variance: lower limit", computed, 0.982694, sixDecimals, () => limit(pooled(), "low")),
    check("the same, pooled variance: upper limit", computed, 1.323872, sixDecimals, () => limit(pooled(), "high")),
    check(
      "Welch–Satterthwaite degrees of freedom, automobile data (n 249 and 79, SD 6.41470 and 6.10771)",
      "NIST, AUTO83B, read",
      136.87499,
      // The standard deviations are printed to six digits.
      5e-4,
      () =>
        degreesOfFreedomAtRatio(
          1,
          { variance: 6.4147 ** 2 / 249, trials: 249 },
          { variance: 6.10771 ** 2 / 79, trials: 79 },
        ),
    ),
    check(
      "factor of a 95 % interval with 16 degrees of freedom",
      "tables of Student's t, from memory",
      2.1199,
      5e-5,
      () => twoSidedT(0.95, 16),
    ),
    check("factor of a 95 % interval with 21 degrees of freedom", "recomputed by hand", 2.079614, sixDecimals, () =>
      twoSidedT(0.95, 21),
    ),
  ],
};
