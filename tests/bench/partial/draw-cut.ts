import type { Limb } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import { simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawDropLanding, drawSquatJump } from "../../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { createRandom } from "../../../core/simulate/random.ts";
import { cutRecording } from "../../../core/simulate/recording-faults.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import type { VariedTrial } from "../varied/draw-trial.ts";
import { trueCountermovementJump, trueDropJump, trueDropLanding, trueSquatJump } from "../varied/true-values.ts";

/** A recording that was begun too late, ended too early, or both. */
export interface Cut {
  readonly name: string;
  readonly test: TestKind;
  /** Seconds after the first movement at which it begins; absent: nothing is missing before the movement. */
  readonly beginsAfter?: (random: () => number) => number;
  /** Seconds after the last touchdown at which it ends; absent: with the recording. */
  readonly endsAfter?: (random: () => number) => number;
}

/** Every way a recording is cut here. Numbers drawn between bounds, so that no cut is tuned for. */
export const cuts: readonly Cut[] = [
  { name: "jump, begun in the dip", test: "countermovementJump", beginsAfter: (random) => 0.05 + 0.2 * random() },
  { name: "jump, begun in the push", test: "countermovementJump", beginsAfter: (random) => 0.4 + 0.2 * random() },
  {
    name: "jump, begun in the dip, ended in the landing",
    test: "countermovementJump",
    beginsAfter: (random) => 0.05 + 0.2 * random(),
    endsAfter: (random) => 0.05 + 0.5 * random(),
  },
  {
    name: "jump, begun in the push, ended in the landing",
    test: "countermovementJump",
    beginsAfter: (random) => 0.4 + 0.2 * random(),
    endsAfter: (random) => 0.05 + 0.5 * random(),
  },
  {
    name: "squat jump, begun in the push",
    test: "squatJump",
    beginsAfter: (random) => 0.05 + 0.15 * random(),
  },
  { name: "drop jump, ended in the landing", test: "dropJump", endsAfter: (random) => 0.05 + 0.4 * random() },
  { name: "drop landing, ended in the landing", test: "dropLanding", endsAfter: (random) => 0.3 + 0.2 * random() },
];

/** Rates, masses, noise, legs and plates are drawn; the same seed and cut give the same. */
export function drawCut(seed: number, { test, beginsAfter, endsAfter }: Cut): VariedTrial {
  const random = createRandom(seed ^ 0x3c6ef372);
  const uniform = (): number => random.uniform();
  const limb: Limb = random.pick(["both", "both", "left", "right"] as const);
  const plates = random.pick(["one", "two"] as const);
  const bounds = { limb, plates, kind: "noisy", ratesHz: [500, 1000, 2000] } as const;
  const trial = { seed, test, limb, plates } as const;
  const cut = (
    recording: Parameters<typeof cutRecording>[0],
    { begins, ends }: { begins: number; ends: number },
  ): VariedTrial["recording"] =>
    cutRecording(
      recording,
      beginsAfter === undefined ? 0 : begins + beginsAfter(uniform),
      endsAfter === undefined ? Number.POSITIVE_INFINITY : ends + endsAfter(uniform),
    );
  switch (test) {
    case "squatJump": {
      const jump = simulateSquatJump(drawSquatJump(seed, bounds));
      const { firstMovement: begins, touchdown: ends } = jump.truth.events;
      return { ...trial, recording: cut(jump, { begins, ends }), truths: trueSquatJump(jump, limb) };
    }
    case "dropJump": {
      const jump = simulateDropJump(drawDropJump(seed, bounds));
      const { landing: ends } = jump.truth.events;
      return { ...trial, recording: cut(jump, { begins: 0, ends }), truths: trueDropJump(jump, limb) };
    }
    case "dropLanding": {
      const drop = simulateDropLanding(drawDropLanding(seed, bounds));
      const { touchdown: ends } = drop.truth.events;
      return { ...trial, recording: cut(drop, { begins: 0, ends }), truths: trueDropLanding(drop, limb) };
    }
    default: {
      const jump = simulateCountermovementJump(drawJump(seed, bounds));
      const { firstMovement: begins, touchdown: ends } = jump.truth.events;
      return { ...trial, recording: cut(jump, { begins, ends }), truths: trueCountermovementJump(jump, limb) };
    }
  }
}
