import { expect, test } from "vitest";
import { plateNoise, weigh } from "../../../core/events/weigh.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { createRandom } from "../../../core/simulate/random.ts";
import type { SampleSpan } from "../../../core/trial/sample-span.ts";

const rateHz = 1000;
const window = { start: 0, end: 1000 };

test("A constant load weighs itself, and is as uncertain as sway that does not show may be", () => {
  const weighing = weigh(new Float64Array(1000).fill(700), rateHz, { window, calm: window }, 0, defaultSettings);
  expect(weighing.newtons).toBe(700);
  // The smaller of √2·v/T and 12·x/T² with the sway of the settings, times m, and 0.01 % of W; by hand.
  const { weighingSwayVelocity, weighingSwayDisplacement, gravity } = defaultSettings;
  const sway = (700 / gravity) * Math.min(Math.SQRT2 * weighingSwayVelocity, 12 * weighingSwayDisplacement);
  expect(weighing.uncertainty).toBeCloseTo(Math.hypot(sway, 0.0001 * 700), 9);
});

test("White noise is told from second differences, whatever moves slowly beneath it", () => {
  const random = createRandom(4);
  const force = Float64Array.from(
    { length: 4000 },
    (_, index) => 700 + 5 * Math.sin(index / 300) + 1.5 * random.normal(),
  );
  // Standard error of an SD from 4000 values is about 1.5/√8000 = 0.017; held to five of them.
  expect(Math.abs(plateNoise(force, { start: 0, end: 4000 }) - 1.5)).toBeLessThan(0.085);
});

test("A shorter window is more uncertain than a full one by more than the lost time alone", () => {
  const force = Float64Array.from({ length: 1000 }, (_, index) => 700 + 8 * Math.sin(index / 40));
  const over = (span: SampleSpan) => weigh(force, rateHz, { window: span, calm: span }, 0, defaultSettings);
  const full = over(window);
  const short = over({ start: 0, end: 200 });
  expect(short.uncertainty).toBeGreaterThan(5 * full.uncertainty);
});
