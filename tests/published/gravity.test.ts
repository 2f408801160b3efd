import { expect, test } from "vitest";
import { normalGravity } from "../../core/gravity.ts";

/** The published values carry ten decimals. */
const lastDecimal = 1e-10;

// CHECKS G2, WGS 84 (constants read, values recomputed there).
test.each([
  [0, 9.7803253359],
  [30, 9.7932472692],
  [45, 9.8061977694],
  [60, 9.8191769531],
  [90, 9.8321849379],
  [-45, 9.8061977694],
])("normal gravity at %d degrees and sea level is the published %d m/s²", (latitude, expected) => {
  expect(Math.abs(normalGravity(latitude, 0) - expected)).toBeLessThan(lastDecimal);
});

// CHECKS G4: tabulated classroom values, read; the tolerance of 0.0012 m/s² is stated there.
test.each([
  ["the pole", 90, 0, 9.832],
  ["Stockholm", 59, 45, 9.818],
  ["Brussels", 51, 102, 9.811],
  ["Chicago", 42, 182, 9.803],
  ["Denver", 40, 1638, 9.796],
  ["the Canal Zone", 9, 6, 9.782],
])("gravity tabulated for %s is met within the table's tolerance", (_, latitude, altitude, expected) => {
  expect(Math.abs(normalGravity(latitude, altitude) - expected)).toBeLessThan(0.0012);
});

test("gravity measured in Gaithersburg is met to a part in 10,000", () => {
  // Tate 1966 (CHECKS G4): 9.801018 m/s² measured; the coordinates 39.13 N, 132 m are from memory.
  expect(Math.abs(normalGravity(39.13, 132) / 9.801018 - 1)).toBeLessThan(1e-4);
});

test("a place that does not exist is a mistake of the caller", () => {
  expect(() => normalGravity(91, 0)).toThrow(RangeError);
  expect(() => normalGravity(45, 20_000)).toThrow(RangeError);
  expect(() => normalGravity(Number.NaN, 0)).toThrow(RangeError);
});
