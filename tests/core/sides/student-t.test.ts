import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { studentTQuantile, twoSidedT } from "../../../core/sides/student-t.ts";
import { quantilesFromScipy } from "./student-t-values.ts";

/** Against double-precision values; SciPy's own quantiles are good to about 1e-12. */
const relativeTolerance = 1e-10;

/** Printed tables carry three decimals. */
const tableTolerance = 0.0005;

describe("Student's t", () => {
  it.each(quantilesFromScipy)(
    "has the quantile SciPy gives at %d with %d degrees of freedom",
    (probability, df, value) => {
      expect(Math.abs(studentTQuantile(probability, df) / value - 1)).toBeLessThan(relativeTolerance);
    },
  );

  // Any printed table of Student's t (from memory), two-sided 95 % and 80 %.
  it.each([
    [0.95, 1, 12.706],
    [0.95, 3, 3.182],
    [0.95, 10, 2.228],
    [0.95, 30, 2.042],
    [0.8, 3, 1.638],
    [0.8, 6, 1.44],
  ])("has the two-sided factor of printed tables at %d with %d degrees of freedom", (confidence, df, value) => {
    expect(Math.abs(twoSidedT(confidence, df) - value)).toBeLessThanOrEqual(tableTolerance);
  });

  it("equals the closed forms for one and two degrees of freedom", () => {
    for (const probability of [0.6, 0.9, 0.99, 0.9999]) {
      // By hand: the Cauchy quantile, and t₂ = (2p − 1)·√(2 / (4p(1 − p))).
      const cauchy = Math.tan(Math.PI * (probability - 0.5));
      const two = (2 * probability - 1) * Math.sqrt(2 / (4 * probability * (1 - probability)));
      expect(Math.abs(studentTQuantile(probability, 1) / cauchy - 1)).toBeLessThan(relativeTolerance);
      expect(Math.abs(studentTQuantile(probability, 2) / two - 1)).toBeLessThan(relativeTolerance);
    }
  });

  it("is symmetric about zero and zero in the middle", () => {
    expect(studentTQuantile(0.5, 4)).toBe(0);
    expect(studentTQuantile(0.25, 4)).toBe(-studentTQuantile(0.75, 4));
  });

  it("grows with confidence and shrinks with degrees of freedom", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.99, noNaN: true }),
        fc.double({ min: 1, max: 200, noNaN: true }),
        (confidence, df) => {
          expect(twoSidedT(confidence + 0.005, df)).toBeGreaterThan(twoSidedT(confidence, df));
          expect(twoSidedT(confidence, df + 1)).toBeLessThan(twoSidedT(confidence, df));
        },
      ),
    );
  });

  it("refuses probabilities and degrees of freedom that mean nothing", () => {
    expect(() => twoSidedT(1, 3)).toThrow(RangeError);
    expect(() => twoSidedT(0.95, 0)).toThrow(RangeError);
    expect(() => studentTQuantile(0, 3)).toThrow(RangeError);
  });
});
