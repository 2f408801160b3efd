import { describe, expect, test } from "vitest";
import { defaultSettings } from "../../core/settings.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawJump } from "../../core/simulate/draw-jump.ts";
import { onlyTrial } from "../core/simulated/simulated-trial.ts";
import { hasShared } from "../worked/worked-example.ts";
import { differences } from "./compare-with-oracle.ts";
import { plainTrial, plainWorkedExample, recordingOf } from "./oracle-trial.ts";
import { plainCountermovementJump } from "./plain-countermovement.ts";

/** Both compute in double precision what is exact on paper. No value here is a small difference of large ones. */
const tolerances = { relative: 1e-9, seconds: 1e-9 };

const layouts = [
  { limb: "both", plates: "two" },
  { limb: "both", plates: "one" },
  { limb: "left", plates: "one" },
  { limb: "right", plates: "two" },
] as const;

/** Odd seeds: detectors are tuned on even ones only. Four layouts in turn; shapes, rates and sizes as drawn. */
const seeds = Array.from({ length: 24 }, (_, index) => 1001 + 2 * index);

describe("program and oracle agree on every event and value of the countermovement jump", () => {
  test.skipIf(!hasShared("worked-examples"))("in the worked example", () => {
    const example = plainWorkedExample("countermovement-two-legs.csv");
    const program = onlyTrial(recordingOf(example), "both");
    expect(differences(program, plainCountermovementJump(example, defaultSettings), tolerances)).toEqual([]);
  });

  test.each(seeds)("without noise, seed %i", (seed) => {
    expect(differencesOfDrawn(seed, "clean", undefined)).toEqual([]);
  });

  test.each(seeds)("swaying without noise, so that no two windows are steady alike, seed %i", (seed) => {
    expect(differencesOfDrawn(seed, "clean", 0.001)).toEqual([]);
  });

  test.each(seeds)("with plate noise and sway, seed %i", (seed) => {
    expect(differencesOfDrawn(seed, "noisy", undefined)).toEqual([]);
  });
});

function differencesOfDrawn(seed: number, kind: "clean" | "noisy", swayMetres: number | undefined): string[] {
  const layout = layouts[((seed - 1001) / 2) % layouts.length]!;
  const drawn = drawJump(seed, { ...layout, kind });
  const simulated = simulateCountermovementJump(swayMetres === undefined ? drawn : { ...drawn, swayMetres });
  const program = onlyTrial(simulated, layout.limb);
  const oracle = plainCountermovementJump(plainTrial(simulated, layout.limb), defaultSettings);
  return differences(program, oracle, tolerances);
}
