import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { clippedPlates } from "../../../core/trial/clipping.ts";
import { converterStep } from "../../../core/trial/converter-step.ts";
import { removePlateZero } from "../../../core/trial/plate-zero.ts";
import { findSpikes } from "../../../core/trial/spikes.ts";
import { told } from "../../told.ts";
import { stretches } from "./standing.ts";

// Forces built by hand at 1000 Hz; no randomness, so agreement is that of doubles.
const rateHz = 1000;
const tolerance = 1e-9;
const settings = defaultSettings;
const weight = 700;

describe("the zero of a plate", () => {
  const parts = [
    [1, 0],
    [2, weight],
    [1, 0],
  ] as const;
  const empty = [
    { start: 0, end: 1000 },
    { start: 3000, end: 4000 },
  ];
  const zeroed = (newtons: (index: number) => number) => {
    const force = stretches(parts).map((value, index) => value + newtons(index));
    return removePlateZero(
      [{ name: "left", limb: "left", proof: "stated", force }],
      [converterStep(force) ?? 0],
      rateHz,
      empty,
      settings,
    );
  };

  test("that drifts in a straight line between empty stretches is removed as that line, and reported", () => {
    const { forces, findings } = zeroed((index) => 3 + 0.002 * index);
    expect(findings.map((each) => each.code)).toEqual(["plate-drift"]);
    // Middle halves of the empty stretches lie 3000 samples apart: 6 N.
    expect(told(findings[0])?.message).toContain("6.0 N");
    expect(Math.abs(forces[0]![1500]! - weight)).toBeLessThan(tolerance);
    expect(Math.abs(forces[0]![3999]!)).toBeLessThan(tolerance);
  });

  test("that stays is removed without a word about drift", () => {
    const { forces, findings } = zeroed(() => 3);
    expect(findings).toEqual([]);
    expect(forces[0]![1500]).toBe(weight);
  });

  test("that moves by less than a newton between the stretches is left as a constant", () => {
    const { findings } = zeroed((index) => 0.0003 * index);
    expect(findings).toEqual([]);
  });

  test("that drifts and lies above ten newtons is reported for both", () => {
    const { findings } = zeroed((index) => 30 + 0.002 * index);
    expect(findings.map((each) => each.code)).toEqual(["plate-drift", "plate-offset"]);
  });
});

describe("a sample that stands alone", () => {
  test("is found in standing and on a steep flank", () => {
    const force = stretches([[1, weight]]);
    force[400] = weight + 300;
    const flank = Float64Array.from({ length: 200 }, (_, index) => index * 20);
    flank[100] = 2500;
    expect(findSpikes(force, settings)).toEqual([400]);
    expect(findSpikes(flank, settings)).toEqual([100]);
  });

  test("is neither an impact, nor ringing at 90 Hz, nor a step, nor a small disturbance", () => {
    // 100 kN/s up to a corner at 4000 N and down again.
    const impact = Float64Array.from({ length: 200 }, (_, index) =>
      Math.max(0, index < 90 ? 100 * (index - 50) : 4000 - 100 * (index - 90)),
    );
    const ringing = Float64Array.from(
      { length: 300 },
      (_, index) => 400 * Math.exp(-index / 30) * Math.sin(2 * Math.PI * 0.09 * index),
    );
    const step = stretches([
      [0.1, 0],
      [0.1, 2000],
    ]);
    const small = stretches([[1, weight]]);
    small[300] = weight + 60;
    for (const force of [impact, ringing, step, small]) expect(findSpikes(force, settings)).toEqual([]);
  });
});

describe("an exceeded range on two plates", () => {
  const plate = (newtons: number, seconds: number, before = 0.5) =>
    stretches([
      [before, weight / 2],
      [seconds, newtons],
      [1 - seconds - before + 0.5, weight / 2],
    ]);

  test("is none where both have their flat top in the same samples at different forces", () => {
    expect(
      clippedPlates([plate(1780, 0.06), plate(1400, 0.06)], 1000, { quiet: [], steadyLoad: weight / 2 }, settings),
    ).toEqual([]);
  });

  test("is none where a converter's coarse steps make the top of a push flat, and is where the same push is cut off", () => {
    const step = 2;
    // A push of 0.3 s that rises 900 N above half the weight as a parabola, in steps of 2 N: six equal samples at 500 Hz.
    const push = Float64Array.from({ length: 500 }, (_, index) => {
      const away = (index - 250.5) / 75;
      return weight / 2 + Math.max(0, 900 * (1 - away * away));
    });
    const stepped = push.map((newtons) => step * Math.round(newtons / step));
    const cut = stepped.map((newtons) => Math.min(newtons, 2 * Math.round((weight / 2 + 850) / 2)));
    const top = Math.max(...stepped);
    expect(stepped.filter((newtons) => newtons === top).length).toBeGreaterThanOrEqual(settings.clippedSamples);
    expect(clippedPlates([stepped], 1000, { quiet: [], steadyLoad: weight / 2 }, settings)).toEqual([]);
    expect(clippedPlates([cut], 1000, { quiet: [], steadyLoad: weight / 2 }, settings)).toHaveLength(1);
  });

  test("is found on the one plate that reaches it, and on both where they reach it at their own times", () => {
    const one = clippedPlates(
      [plate(2000, 0.02), plate(1400, 0.001)],
      1000,
      { quiet: [], steadyLoad: weight / 2 },
      settings,
    );
    expect(one.map((each) => each.plate)).toEqual([0]);
    const both = clippedPlates(
      [plate(2000, 0.02), plate(2000, 0.015)],
      1000,
      { quiet: [], steadyLoad: weight / 2 },
      settings,
    );
    expect(both.map((each) => each.plate)).toEqual([0, 1]);
  });
});
