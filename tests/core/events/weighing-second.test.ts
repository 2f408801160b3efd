import { describe, expect, test } from "vitest";
import { weigh } from "../../../core/events/weigh.ts";
import { weighingSecond } from "../../../core/events/weighing-second.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SampleSpan } from "../../../core/trial/sample-span.ts";

const rateHz = 1000;
const weight = 700;
const massKg = weight / defaultSettings.gravity;
/** Three seconds of quiet standing. */
const quiet = [{ start: 0, end: 3000 }];

/** Force of somebody who sways by a millimetre at a frequency, −m·ω²·x by hand, and trembles at 3.3 and 5.4 Hz. */
function swaying(frequencyHz: number): Float64Array {
  const angular = 2 * Math.PI * frequencyHz;
  return Float64Array.from({ length: 3000 }, (_, index) => {
    const time = index / rateHz;
    const slow = angular ** 2 * 0.001 * Math.sin(angular * time + 1);
    return weight - massKg * (slow + 0.02 * Math.sin(21 * time) + 0.02 * Math.sin(34 * time + 1));
  });
}

test("Of seconds that are still alike the one nearest the movement weighs", () => {
  const force = new Float64Array(3000).fill(weight);
  const choose = (side: "before" | "after") => weighingSecond(force, rateHz, quiet, defaultSettings, side)?.window;
  expect(choose("before")).toEqual({ start: 2000, end: 3000 });
  expect(choose("after")).toEqual({ start: 0, end: 1000 });
});

describe.each([0.7, 0.9, 1.2, 1.6])("sway of %f Hz over three seconds", (frequencyHz) => {
  const force = swaying(frequencyHz);
  const error = (span: SampleSpan): number =>
    Math.abs(weigh(force, rateHz, { window: span, calm: span }, 0, defaultSettings).newtons - weight);

  test.each(["before", "after"] as const)("is weighed %s the movement where a second agrees with the whole", (side) => {
    const { window, calm } = weighingSecond(force, rateHz, quiet, defaultSettings, side)!;
    const seconds = Array.from({ length: 2001 }, (_, start) => error({ start, end: start + 1000 }));
    expect(calm).toEqual(quiet[0]);
    // A second taken anywhere may be off by m·2·v/T; the whole shows where that cancels.
    expect(error(window)).toBeLessThan(Math.max(...seconds) / 6);
  });
});

test("A shift of the weight ends the calm standing, and lies outside the second that weighs", () => {
  const force = Float64Array.from(
    { length: 3000 },
    (_, index) => weight + (index > 300 && index < 700 ? 20 : index % 2),
  );
  const { window, calm } = weighingSecond(force, rateHz, quiet, defaultSettings, "before")!;
  expect(calm.start).toBeGreaterThanOrEqual(690);
  expect(window.start).toBeGreaterThanOrEqual(690);
});

test("Less than a second of standing weighs as it is, and nothing is no weighing", () => {
  const force = new Float64Array(3000).fill(weight);
  const short = { start: 100, end: 500 };
  expect(weighingSecond(force, rateHz, [short], defaultSettings, "before")).toEqual({ window: short, calm: short });
  expect(weighingSecond(force, rateHz, [], defaultSettings, "before")).toBeUndefined();
});
