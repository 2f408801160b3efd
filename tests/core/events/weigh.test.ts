import { describe, expect, test } from "vitest";
import { compareWeights, poolWeights } from "../../../core/events/session-weight.ts";
import { plateNoise, weigh } from "../../../core/events/weigh.ts";
import { defaultSettings } from "../../../core/settings.ts";
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

describe("the session's weight", () => {
  test("is the mean weighted by 1/u²: 700 ± 1 and 703 ± 2 give 700.6 N", () => {
    const pooled = poolWeights(
      [
        { newtons: 700, uncertainty: 1 },
        { newtons: 703, uncertainty: 2 },
      ],
      defaultSettings,
    );
    expect(pooled?.newtons).toBeCloseTo(700.6, 9);
    // 1/√(1 + 1/4) and the floor of 0.01 %.
    expect(pooled?.uncertainty).toBeCloseTo(Math.hypot(Math.sqrt(0.8), 0.0001 * 700.6), 9);
  });

  test("is not moved by one hand on a rail, which is named instead", () => {
    const rail = { newtons: 676.4, uncertainty: 0.3 };
    const sound = [700, 701, 699.5].map((newtons) => ({ newtons, uncertainty: 0.3 }));
    const pooled = poolWeights([...sound, rail], defaultSettings);
    expect(pooled?.trials).toBe(3);
    expect(compareWeights(sound[0]!, pooled, {}, defaultSettings)).toEqual([]);
    const [said] = compareWeights(rail, pooled, {}, defaultSettings);
    expect(said?.code).toBe("weight-differs");
    expect(said?.message).toContain("3.4 % below");
  });

  test("does not exist with one weighing", () => {
    expect(poolWeights([{ newtons: 700, uncertainty: 1 }], defaultSettings)).toBeUndefined();
  });

  test("leaves an entered mass to be checked: 3 kg apart is said, 1 kg is not", () => {
    const own = { newtons: 70 * defaultSettings.gravity, uncertainty: 0.3 };
    expect(compareWeights(own, undefined, { enteredMassKg: 73 }, defaultSettings).map((each) => each.code)).toEqual([
      "weight-differs",
    ]);
    expect(compareWeights(own, undefined, { enteredMassKg: 71 }, defaultSettings)).toEqual([]);
  });
});
