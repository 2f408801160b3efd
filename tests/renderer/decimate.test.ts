import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { decimate } from "../../renderer/charts/decimate.ts";

const curve = (values: readonly number[]) => ({
  values: Float64Array.from(values),
  startSeconds: 0,
  stepSeconds: 0.001,
});
const everything = { from: -1, to: 1e6 };

describe("thinning a curve for drawing", () => {
  it("keeps the smallest and the largest value of any curve, whatever the number of points", () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: -5000, max: 5000, noNaN: true }), { minLength: 1, maxLength: 3000 }),
        fc.integer({ min: 2, max: 400 }),
        (values, most) => {
          const { y } = decimate(curve(values), everything, most);
          expect(Math.max(...y)).toBe(Math.max(...values));
          expect(Math.min(...y)).toBe(Math.min(...values));
        },
      ),
      { seed: 20_260_101 },
    );
  });

  it("never draws more points than asked for, nor one out of order", () => {
    const values = Array.from({ length: 10_000 }, (_, index) => Math.sin(index / 7));
    const { x } = decimate(curve(values), everything, 500);
    expect(x.length).toBeLessThanOrEqual(500);
    expect(x.every((seconds, at) => at === 0 || seconds > x[at - 1]!)).toBe(true);
  });

  it("keeps a spike of one sample in a million", () => {
    const values = new Float64Array(1_000_000);
    values[123_457] = 2500;
    const { x, y } = decimate({ values, startSeconds: 2, stepSeconds: 0.001 }, everything, 2000);
    // by hand: sample 123457 at 1000 Hz, 2 s after the start
    expect(x[y.indexOf(2500)]).toBeCloseTo(2 + 123.457, 9);
  });

  it("draws every sample of a short stretch, with one neighbour beyond each edge", () => {
    const values = Array.from({ length: 100 }, (_, index) => index);
    const { y } = decimate(curve(values), { from: 0.01, to: 0.012 }, 50);
    // by hand: samples 10 to 12 are visible, 9 and 13 are their neighbours
    expect(y).toEqual([9, 10, 11, 12, 13]);
  });

  it("leaves a gap where there is no number, and loses none beside it", () => {
    const values = Array.from({ length: 4000 }, (_, index) => (index < 2000 ? Number.NaN : index));
    const { y } = decimate(curve(values), everything, 100);
    // by hand: 50 buckets of 80 samples, of which 25 hold no number and leave one point each
    expect(y.slice(0, 25).every(Number.isNaN)).toBe(true);
    expect(y.slice(25).some(Number.isNaN)).toBe(false);
    expect(y).toContain(2000);
    expect(y).toContain(3999);
  });
});
