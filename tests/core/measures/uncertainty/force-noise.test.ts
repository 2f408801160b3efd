import { describe, expect, test } from "vitest";
import { impulseNoise, peakNoise } from "../../../../core/measures/uncertainty/force-noise.ts";
import { defaultSettings } from "../../../../core/settings/settings.ts";

const quiet = { white: 0, point: 0, zero: 0 };

describe("a largest force", () => {
  test("between samples may exceed the samples by the rise of a parabola, an eighth of the second difference", () => {
    const force = Float64Array.from([0, 900, 1000, 900, 0]);
    const { newtons, place } = peakNoise(
      { rateHz: 1000, force },
      { newtons: 1000, sample: 2 },
      0,
      4,
      quiet,
      defaultSettings,
    );
    // By hand: (2 · 1000 − 900 − 900)/8 = 25 N as a rectangle; the place anywhere within a sample.
    expect(newtons).toBeCloseTo(25 / Math.sqrt(3), 12);
    expect(place).toBeCloseTo(1 / Math.sqrt(12), 12);
  });

  test("among many samples that noise makes alike is the luckiest, and may really lie at any of them", () => {
    const force = Float64Array.from({ length: 101 }, () => 1000);
    const noise = { white: 2, point: 2, zero: 0 };
    const { newtons, place } = peakNoise(
      { rateHz: 1000, force },
      { newtons: 1000, sample: 40 },
      0,
      100,
      noise,
      defaultSettings,
    );
    // By hand: σ = 2 N, the largest of 101 deviations σ·√(2 ln 101) above none at most.
    expect(newtons).toBeCloseTo(2 * Math.sqrt(1 + 2 * Math.log(101)), 12);
    // 60 samples to the furthest of them, and the half sample it stands for.
    expect(place).toBeCloseTo(60.5 / Math.sqrt(3), 12);
  });
});

test("A plate's zero adds to a gross impulse in proportion to time, noise to its root", () => {
  // By hand: 2 N · √(400)/1000 Hz and 0.5 N · 0.4 s.
  expect(impulseNoise({ white: 2, point: 2, zero: 0.5 }, 400, 1000)).toBeCloseTo(Math.hypot(0.04, 0.2), 12);
});
