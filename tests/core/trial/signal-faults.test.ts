import { describe, expect, test } from "vitest";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SimulatedRecording } from "../../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawSquatJump } from "../../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { holdSamples, repeatSamples, smoothForce } from "../../../core/simulate/recording-faults.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import { asRecording } from "../simulated/simulated-trial.ts";

// Odd seeds were not used while the findings were written.
const seeds = Array.from({ length: 4 }, (_, index) => 2 * index + 1);
const aboutTheSignal = [
  "samples-lost",
  "samples-held",
  "smoothed",
  "rate-not-real",
  "sign-changes",
  "plate-dead",
  "load-changes",
  "landing-other-plate",
];

type Kind = "clean" | "noisy";
const battery: readonly (readonly [
  TestKind,
  (seed: number, kind: Kind, limb: "both" | "left") => SimulatedRecording,
])[] = [
  [
    "countermovementJump",
    (seed, kind, limb) => simulateCountermovementJump(drawJump(seed, { limb, plates: "two", kind })),
  ],
  ["squatJump", (seed, kind, limb) => simulateSquatJump(drawSquatJump(seed, { limb, plates: "two", kind }))],
  ["dropJump", (seed, kind, limb) => simulateDropJump(drawDropJump(seed, { limb, plates: "two", kind }))],
];

/** The samples as a converter with steps of so many newtons gives them. */
function inSteps(recording: SimulatedRecording, newtons: number): SimulatedRecording {
  const plates = recording.plates.map((plate) => ({
    ...plate,
    force: plate.force.map((force) => newtons * Math.round(force / newtons)),
  }));
  return { ...recording, plates };
}

function codesOf(recording: SimulatedRecording, kind: TestKind, limb: "both" | "left"): readonly string[] {
  const trials = analyzeRecording(asRecording(recording), { test: kind, limb }, defaultSettings);
  return trials.flatMap(({ result }) => result.findings.map(({ code }) => code));
}

describe.each(battery)("A sound %s", (kind, make) => {
  test.each([
    ["without noise", "clean", 0],
    ["with noise", "noisy", 0],
    ["without noise, in steps of a tenth of a newton", "clean", 0.1],
    ["without noise, in steps of a newton", "clean", 1],
    ["with noise, in steps of a newton", "noisy", 1],
    ["with noise, in steps of five newtons", "noisy", 5],
  ] as const)("%s has no finding about its signal", (_, noise, step) => {
    for (const [index, seed] of seeds.entries()) {
      const limb = index % 2 === 0 ? "both" : "left";
      const simulated = make(seed, noise, limb);
      const recording = step === 0 ? simulated : inSteps(simulated, step);
      expect(codesOf(recording, kind, limb).filter((code) => aboutTheSignal.includes(code))).toEqual([]);
    }
  });
});

describe("A faulty signal is found at every rate drawn, and in steps of a newton", () => {
  const jumps = seeds.map((seed) =>
    simulateCountermovementJump(drawJump(seed, { limb: "both", plates: "two", kind: "noisy" })),
  );
  const found = (change: (jump: (typeof jumps)[number]) => SimulatedRecording, code: string): void => {
    for (const jump of jumps) expect(codesOf(inSteps(change(jump), 1), "countermovementJump", "both")).toContain(code);
  };

  test("80 ms held in the push", () => {
    found((jump) => {
      const from = jump.truth.events.lowestPosition - 0.04;
      return holdSamples(jump, from, from + 0.08);
    }, "samples-held");
  });

  test("each value repeated ten times", () => {
    found((jump) => repeatSamples(jump, 10), "rate-not-real");
  });

  test("a mean over 80 ms", () => {
    found((jump) => smoothForce(jump, 0.08), "smoothed");
  });
});
