import { expect, test } from "vitest";
import { peakRipple } from "../../../../core/measures/uncertainty/peak-ripple.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";

const rateHz = 1000;
/** A peak of 2000 N at sample 100 with a skew, of the fourth degree. */
const peakAt = (index: number): number => {
  const x = (index - 100) / 100;
  return 2000 * (1 - x ** 2 + 0.3 * x ** 3 + 0.1 * x ** 4);
};
const signal = (newtonsAt: (index: number) => number) => ({
  rateHz,
  force: Float64Array.from({ length: 201 }, (_, index) => newtonsAt(index)),
});

test("A smooth peak has no ripple", () => {
  expect(peakRipple(signal(peakAt), 100, 0, 200, defaultSettings)).toBeLessThan(1e-9);
});

test("Ringing about a peak is its amplitude over √2, as root mean squares are", () => {
  // 160 Hz, four periods within the 24 ms; the polynomial takes up a little of it, its lost freedom gives that back.
  const ringing = signal((index) => peakAt(index) + 10 * Math.sin(2 * Math.PI * 0.16 * (index - 100)));
  const tolerance = 0.15;
  expect(Math.abs(peakRipple(ringing, 100, 0, 200, defaultSettings) / (10 / Math.SQRT2) - 1)).toBeLessThan(tolerance);
});

test("With too few samples beside the peak nothing is said", () => {
  const ringing = signal((index) => peakAt(index) + 10 * (-1) ** index);
  // Four to either side are nine, three more than the polynomial takes up; five are eleven.
  expect(peakRipple(ringing, 100, 96, 200, defaultSettings)).toBe(0);
  expect(peakRipple(ringing, 100, 95, 200, defaultSettings)).toBeGreaterThan(5);
});
