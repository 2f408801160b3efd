import { describe, expect, it } from "vitest";
import { createRandom } from "../../../core/simulate/random.ts";

const draws = 100_000;
// Five standard errors of the estimate: about one false alarm in two million, and the seed is fixed anyway.
const fiveErrors = 5 / Math.sqrt(draws);

describe("the seeded generator", () => {
  it("repeats itself for one seed and differs for neighbouring seeds", () => {
    const take = (seed: number): number[] => {
      const random = createRandom(seed);
      return Array.from({ length: 20 }, () => random.uniform());
    };
    expect(take(7)).toEqual(take(7));
    expect(take(7)).not.toEqual(take(8));
    expect(Math.abs((take(7)[0] ?? 0) - (take(8)[0] ?? 0))).toBeGreaterThan(1e-3);
  });

  it("draws uniforms of mean 1/2 and variance 1/12 and standard normals", () => {
    const random = createRandom(20261124);
    const uniforms = Array.from({ length: draws }, () => random.uniform());
    const normals = Array.from({ length: draws }, () => random.normal());
    const mean = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0) / values.length;
    const square = (values: readonly number[], middle: number): number =>
      mean(values.map((each) => (each - middle) ** 2));
    // Moments by hand: uniform 1/2 and 1/12, normal 0 and 1 (SD of a squared normal is √2).
    expect(Math.abs(mean(uniforms) - 0.5)).toBeLessThan(fiveErrors * Math.sqrt(1 / 12));
    expect(Math.abs(square(uniforms, 0.5) - 1 / 12)).toBeLessThan(fiveErrors * 0.08);
    expect(Math.abs(mean(normals))).toBeLessThan(fiveErrors);
    expect(Math.abs(square(normals, 0) - 1)).toBeLessThan(fiveErrors * Math.SQRT2);
    expect(Math.min(...uniforms)).toBeGreaterThanOrEqual(0);
    expect(Math.max(...uniforms)).toBeLessThan(1);
  });
});
