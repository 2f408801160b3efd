import { describe, expect, test } from "vitest";
import { findOnset } from "../../../core/events/onset.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";

// Standing at 700 N with a band of 7 N, then a movement along straight lines at 1000 Hz; the set-back is 30 ms.
const rateHz = 1000;
const search = (force: Float64Array, from: number) => ({
  force,
  rateHz,
  from,
  earliest: 0,
  weightNewtons: 700,
  band: 7,
});
const moving = (slope: number) =>
  Float64Array.from({ length: 600 }, (_, index) => 700 + Math.max(0, index - 300) * slope);

describe("an onset", () => {
  test("of a squat jump is where the rise leaves the band upwards, minus 30 ms", () => {
    // 2 N a sample from 300: the band is left at 303.5.
    expect(findOnset(search(moving(2), 599), 1, defaultSettings)).toBeCloseTo(303.5 - 30, 9);
  });

  test("of a countermovement is where the dip leaves it downwards, minus 30 ms", () => {
    expect(findOnset(search(moving(-2), 599), -1, defaultSettings)).toBeCloseTo(303.5 - 30, 9);
  });

  test("is searched backwards, so that an earlier shift does not stop the search", () => {
    const force = moving(2);
    for (let index = 100; index < 150; index += 1) force[index] = 760;
    expect(findOnset(search(force, 599), 1, defaultSettings)).toBeCloseTo(273.5, 9);
  });

  test("of a dip that never leaves the band is counted from the dip itself, however flat force is there", () => {
    expect(findOnset(search(new Float64Array(600).fill(695), 400), -1, defaultSettings)).toBeCloseTo(400 - 30, 9);
  });

  test("is unknown where the recording starts in the movement", () => {
    expect(findOnset(search(new Float64Array(600).fill(900), 599), 1, defaultSettings)).toBeUndefined();
  });
});
