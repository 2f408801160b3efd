import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ratioInterval } from "../../../core/sides/ratio-interval.ts";
import { independentMoments, pairedMoments } from "../../../core/sides/ratio-moments.ts";
import { mean } from "../../../core/sides/trial-statistic.ts";

/** Floating-point rounding through a handful of operations on well-scaled numbers. */
const relativeTolerance = 1e-9;
/** A half-width is the root of a difference of variances: where these nearly cancel, half of the digits of a double go. */
const rootTolerance = 1e-7;

const stated = (values: readonly number[]) => ({ values, statistic: mean(values) });
const value = fc.double({ min: 50, max: 150, noNaN: true });
const trials = fc.array(value, { minLength: 2, maxLength: 8 });
const pairs = fc.array(fc.tuple(value, value), { minLength: 2, maxLength: 8 });
const confidence = fc.double({ min: 0.5, max: 0.99, noNaN: true });

function near(actual: number | undefined, expected: number | undefined, tolerance = relativeTolerance) {
  expect(actual === undefined).toBe(expected === undefined);
  if (actual !== undefined && expected !== undefined) {
    expect(Math.abs(actual - expected)).toBeLessThanOrEqual(tolerance * Math.max(1, Math.abs(expected)));
  }
}

/**
 * Fieller's limits in the other published form, straight from the quadratic (NIST form of CHECKS I1). Its discriminant
 * is summed from terms that cannot be negative (Lagrange's identity), so that rounding leaves no root of a negative number.
 */
function quadraticLimits(first: readonly number[], second: readonly number[], t: number) {
  const n = first.length;
  const [a, b] = [mean(first), mean(second)];
  const away = (values: readonly number[]) => values.map((each) => each - mean(values));
  const [x, y] = [away(first), away(second)];
  const total = (term: (at: number) => number) => first.reduce((sum, _, at) => sum + term(at), 0);
  const [dx, dy] = [(at: number) => x[at] ?? 0, (at: number) => y[at] ?? 0];
  const scale = n * (n - 1);
  const middle = a * b - (t * t * total((at) => dx(at) * dy(at))) / scale;
  const below = b * b - (t * t * total((at) => dy(at) ** 2)) / scale;
  const spread = total((at) => (a * dy(at) - b * dx(at)) ** 2) / scale;
  const area = total((i) => total((j) => (j < i ? (dx(i) * dy(j) - dx(j) * dy(i)) ** 2 : 0))) / scale ** 2;
  const root = t * Math.sqrt(spread - t * t * area);
  return { low: (middle - root) / below, high: (middle + root) / below };
}

describe("the interval of a ratio", () => {
  it("contains the estimate and widens with confidence", () => {
    fc.assert(
      fc.property(trials, trials, confidence, (first, second, level) => {
        const moments = independentMoments(stated(first), stated(second), "mean");
        const narrow = ratioInterval(moments, level);
        const wide = ratioInterval(moments, level + 0.005);
        if (narrow.limits === undefined) {
          expect(wide.limits).toBeUndefined();
          return;
        }
        expect(narrow.limits.low).toBeLessThanOrEqual(narrow.ratio);
        expect(narrow.limits.high).toBeGreaterThanOrEqual(narrow.ratio);
        if (wide.limits === undefined) return;
        expect(wide.limits.low).toBeLessThanOrEqual(narrow.limits.low + relativeTolerance);
        expect(wide.limits.high).toBeGreaterThanOrEqual(narrow.limits.high - relativeTolerance);
      }),
    );
  });

  it("is unchanged when both sides are scaled alike", () => {
    fc.assert(
      fc.property(pairs, fc.double({ min: 0.01, max: 100, noNaN: true }), confidence, (both, factor, level) => {
        const [first, second] = [both.map((pair) => pair[0]), both.map((pair) => pair[1])];
        const scale = (values: readonly number[]) => stated(values.map((each) => each * factor));
        for (const moments of [pairedMoments, independentMoments]) {
          const plain = ratioInterval(moments(stated(first), stated(second), "mean"), level);
          const scaled = ratioInterval(moments(scale(first), scale(second), "mean"), level);
          near(scaled.ratio, plain.ratio);
          near(scaled.g, plain.g);
          // Limits near g = 1 divide by almost nothing; there only the ratio can be asked to agree.
          if (plain.g > 0.9) continue;
          near(scaled.limits?.low, plain.limits?.low, rootTolerance / (1 - plain.g));
          near(scaled.limits?.high, plain.limits?.high, rootTolerance / (1 - plain.g));
        }
      }),
    );
  });

  it("turns upside down when the sides are swapped, paired", () => {
    fc.assert(
      fc.property(pairs, confidence, (both, level) => {
        const [first, second] = [both.map((pair) => pair[0]), both.map((pair) => pair[1])];
        const plain = ratioInterval(pairedMoments(stated(first), stated(second), "mean"), level);
        const swapped = ratioInterval(pairedMoments(stated(second), stated(first), "mean"), level);
        near(swapped.ratio, 1 / plain.ratio);
        if (plain.g > 0.9 || swapped.g > 0.9 || plain.limits === undefined) return;
        near(swapped.limits?.low, 1 / plain.limits.high, rootTolerance / (1 - swapped.g));
        near(swapped.limits?.high, 1 / plain.limits.low, rootTolerance / (1 - swapped.g));
      }),
    );
  });

  it("is exactly one, without width, for paired identical sides", () => {
    fc.assert(
      fc.property(trials, (values) => {
        const { ratio, limits } = ratioInterval(pairedMoments(stated(values), stated(values), "mean"), 0.95);
        expect(ratio).toBe(1);
        // A spread so large that the interval is unbounded has no limits to compare.
        if (limits !== undefined) {
          expect(Math.abs(limits.low - 1)).toBeLessThanOrEqual(relativeTolerance);
          expect(Math.abs(limits.high - 1)).toBeLessThanOrEqual(relativeTolerance);
        }
      }),
    );
  });

  it("agrees with the quadratic form of the same limits", () => {
    fc.assert(
      fc.property(pairs, (both) => {
        const [first, second] = [both.map((pair) => pair[0]), both.map((pair) => pair[1])];
        const moments = { ...pairedMoments(stated(first), stated(second), "mean"), degreesOfFreedom: Infinity };
        const made = ratioInterval(moments, 0.95);
        if (made.g > 0.5 || made.limits === undefined) return;
        // The normal factor at 95 %: scipy.stats.norm.ppf(0.975), SciPy 1.17.1.
        const other = quadraticLimits(first, second, 1.9599639845400536);
        near(made.limits.low, other.low, rootTolerance);
        near(made.limits.high, other.high, rootTolerance);
      }),
    );
  });

  it("gets the whole interval into the estimate when no side varies", () => {
    const moments = independentMoments(stated([9, 9, 9]), stated([10, 10, 10]), "mean");
    expect(ratioInterval(moments, 0.95).limits).toEqual({ low: 0.9, high: 0.9 });
  });

  it("expects a narrower interval from more trials of the same spread", () => {
    const first = stated([0.121, 0.128, 0.117, 0.124]);
    const second = stated([0.136, 0.131, 0.142, 0.138]);
    const width = (extra: number) => {
      const { limits } = ratioInterval(independentMoments(first, second, "mean", extra), 0.8);
      return (limits?.high ?? Number.NaN) - (limits?.low ?? Number.NaN);
    };
    expect(width(1)).toBeLessThan(width(0));
    expect(width(2)).toBeLessThan(width(1));
  });
});
