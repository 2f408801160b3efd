import fc from "fast-check";
import { expect, test } from "vitest";
import { describeFilter } from "../../../core/recording/describe-filter.ts";
import { zeroLagFilter } from "../../../core/recording/zero-lag-filter.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";

/** Relative to the constant. */
const constantTolerance = 1e-9;

test("a constant of any length, rate and cut-off stays that constant", () => {
  const situation = fc.record({
    length: fc.integer({ min: 1, max: 400 }),
    value: fc.double({ min: -5000, max: 5000, noNaN: true }),
    rateHz: fc.integer({ min: 200, max: 2000 }),
    cutoffHz: fc.integer({ min: 5, max: 99 }),
  });
  fc.assert(
    fc.property(situation, ({ length, value, rateHz, cutoffHz }) => {
      const filtered = zeroLagFilter(new Float64Array(length).fill(value), rateHz, cutoffHz, defaultSettings);
      return filtered.every((each) => Math.abs(each - value) <= constantTolerance * Math.max(1, Math.abs(value)));
    }),
    { numRuns: 500 },
  );
});

test("a signal turned round gives the result turned round far from its ends: there is no lag", () => {
  const length = 600;
  const signal = Float64Array.from({ length }, (_, index) => 700 + 300 * Math.exp(-(((index - 300) / 12) ** 2)));
  const filtered = zeroLagFilter(signal, 1000, 50, defaultSettings);
  const backwards = zeroLagFilter(signal.toReversed(), 1000, 50, defaultSettings).toReversed();
  for (let index = 200; index < 400; index++) {
    expect(Math.abs(filtered[index]! - backwards[index]!)).toBeLessThan(1e-9 * 1000);
  }
  // By hand: the bump is symmetric around sample 300, so its filtered peak is there as well.
  expect(filtered.indexOf(Math.max(...filtered))).toBe(300);
});

test("the input is not changed and its length is kept, down to nothing", () => {
  const signal = Float64Array.of(1, 5, 2);
  expect(zeroLagFilter(signal, 1000, 50, defaultSettings)).toHaveLength(3);
  expect([...signal]).toEqual([1, 5, 2]);
  expect(zeroLagFilter(new Float64Array(0), 1000, 50, defaultSettings)).toHaveLength(0);
});

test("a signal shorter than the padding is still smoothed", () => {
  const filtered = zeroLagFilter(Float64Array.of(0, 10, 0, 10, 0), 1000, 50, defaultSettings);
  const spread = Math.max(...filtered) - Math.min(...filtered);
  expect(spread).toBeLessThan(5); // by hand: alternating samples lie at half the sampling rate, which is removed
});

test("a cut-off that cannot be realised leaves the values as they are, and the description says so", () => {
  const signal = Float64Array.of(0, 10, 0, 10, 0);
  expect(zeroLagFilter(signal, 100, 50, defaultSettings)).toEqual(signal);
  expect(describeFilter(defaultSettings, 100)).toMatch(/^not filtered: a cut-off of 50 Hz/);
});

test("the description names type, passes, cut-off, correction and ends as they are computed", () => {
  expect(describeFilter(defaultSettings, 1000)).toBe(
    "zero-lag Butterworth low-pass, one second-order section forward and backward (effective order 4), " +
      "50 Hz where both passes together are 3 dB down (corrected on the warped frequency for two passes), " +
      "ends continued by odd reflection over 9 samples with settled initial state",
  );
  expect(describeFilter(settingsWith({ filterHz: 20 }), 1000)).toContain("20 Hz where both passes");
});
