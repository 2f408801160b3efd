import { describe, expect, test } from "vitest";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../core/simulate/draw-jump.ts";
import { onlyTrial } from "../core/simulated/simulated-trial.ts";
import { hasShared } from "../worked/worked-example.ts";
import { differences, exactly, nearly } from "./compare-with-oracle.ts";
import { plainTrial, plainWorkedExample, recordingOf } from "./oracle-trial.ts";
import { plainCountermovementJump } from "./plain-countermovement.ts";
import type { PlainResult } from "./plain-values.ts";

const layouts = [
  { limb: "both", plates: "two" },
  { limb: "both", plates: "one" },
  { limb: "left", plates: "one" },
  { limb: "right", plates: "two" },
] as const;

/** Odd seeds: detectors are tuned on even ones only. Four layouts in turn; shapes, rates and sizes as drawn. */
const seeds = Array.from({ length: 12 }, (_, index) => 1001 + 2 * index);
/** A pause at the bottom and a slow dip, where another search once differed. */
const difficult = [1063, 4075];

describe("program and oracle agree on every event and value of the countermovement jump", () => {
  test.skipIf(!hasShared("worked-examples"))("in the worked example", () => {
    const example = plainWorkedExample("countermovement-two-legs.csv");
    const program = onlyTrial(recordingOf(example), "both");
    expect(differences(program, plainCountermovementJump(example, defaultSettings), exactly)).toEqual([]);
  });

  test.each([...seeds, ...difficult])("without noise, seed %i", (seed) => {
    const { program, oracle } = analysed(seed, "clean");
    expect(differences(program, oracle, exactly)).toEqual([]);
  });

  test.each(seeds)("swaying without noise, so that no two windows are steady alike, seed %i", (seed) => {
    const { program, oracle } = analysed(seed, "clean", 0.001);
    expect(differences(program, oracle, exactly)).toEqual([]);
  });

  test("with plate noise and sway: all nearly, and all but one in eight exactly", () => {
    const noisy = seeds.map((seed) => analysed(seed, "noisy"));
    for (const [index, { program, oracle }] of noisy.entries()) {
      expect(differences(program, oracle, nearly), `seed ${seeds[index]}`).toEqual([]);
    }
    const exact = noisy.filter(({ program, oracle }) => differences(program, oracle, exactly).length === 0);
    expect(exact.length).toBeGreaterThanOrEqual((7 / 8) * seeds.length);
  });
});

function analysed(
  seed: number,
  kind: "clean" | "noisy",
  swayMetres?: number,
): { program: TrialResult; oracle: PlainResult } {
  const layout = layouts[((seed - 1001) / 2) % layouts.length]!;
  const drawn = drawJump(seed, { ...layout, kind });
  const simulated = simulateCountermovementJump(swayMetres === undefined ? drawn : { ...drawn, swayMetres });
  return {
    program: onlyTrial(simulated, layout.limb),
    oracle: plainCountermovementJump(plainTrial(simulated, layout.limb), defaultSettings),
  };
}
