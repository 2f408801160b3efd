import type { Limb } from "../../../core/ground/limb.ts";
import type { TestKind } from "../../../core/ground/test-kind.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawArmSwingJump } from "../../../core/simulate/draw-arm-swing.ts";
import { drawDropLanding, drawHops, drawSquatJump } from "../../../core/simulate/draw-battery.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../../core/simulate/drop-landing.ts";
import { createRandom } from "../../../core/simulate/random.ts";
import { simulateHops } from "../../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../../core/simulate/squat-jump.ts";
import type { Condition } from "./conditions.ts";
import {
  type TrueValue,
  trueCountermovementJump,
  trueDropJump,
  trueDropLanding,
  trueHops,
  trueSquatJump,
} from "./true-values.ts";

/** One varied trial: what was done, how it was recorded, and what really happened. */
export interface VariedTrial {
  readonly seed: number;
  readonly test: TestKind;
  readonly limb: Limb;
  readonly plates: "one" | "two";
  readonly recording: SimulatedRecording;
  readonly truths: readonly TrueValue[];
}

/** Every test in turn, on two legs and on one. No trace tells a jump with arm swing from one without, so it has no turn. */
const styles: readonly (readonly [TestKind, "both" | "single"])[] = [
  ["countermovementJump", "both"],
  ["squatJump", "both"],
  ["dropJump", "both"],
  ["repeatedHops", "both"],
  ["dropLanding", "both"],
  ["countermovementJump", "single"],
  ["squatJump", "single"],
  ["dropJump", "single"],
  ["repeatedHops", "single"],
  ["dropLanding", "single"],
];

/** The trial of a seed: odd seeds are for claims, even ones for tuning. The same seed and condition give the same. */
export function drawVariedTrial(seed: number, condition: Condition): VariedTrial {
  const random = createRandom(seed ^ 0x1f83d9ab);
  const [test, legs] = styles[(seed >> 1) % styles.length]!;
  const limb = legs === "both" ? "both" : random.pick(["left", "right"] as const);
  const plates = random.pick(["one", "two"] as const);
  const bounds = {
    limb,
    plates,
    kind: "noisy",
    ...(random.uniform() < 0.3 ? { edges: "straight" as const } : {}),
    ...(condition.ratesHz === undefined ? {} : { ratesHz: condition.ratesHz }),
  } as const;
  const around = {
    ...(test === "dropJump" || test === "dropLanding" || random.uniform() < 0.6
      ? {}
      : { emptySecondsBefore: random.between(0.8, 2) }),
    ...(random.uniform() < 0.6 ? {} : { emptySecondsAfter: random.between(0.8, 2) }),
  };
  const own = { ...around, ...condition.plate(random) };
  return { seed, test, limb, plates, ...simulate() };

  function simulate(): Pick<VariedTrial, "recording" | "truths"> {
    switch (test) {
      case "countermovementJump": {
        const jump = simulateCountermovementJump({ ...drawJump(seed, bounds), ...own });
        return { recording: jump, truths: trueCountermovementJump(jump, limb) };
      }
      case "countermovementJumpArmSwing": {
        const jump = simulateCountermovementJump({ ...drawArmSwingJump(seed, bounds), ...own });
        return { recording: jump, truths: trueCountermovementJump(jump, limb) };
      }
      case "squatJump": {
        const jump = simulateSquatJump({ ...drawSquatJump(seed, bounds), ...own });
        return { recording: jump, truths: trueSquatJump(jump, limb) };
      }
      case "dropJump": {
        const jump = simulateDropJump({ ...drawDropJump(seed, bounds), ...own });
        return { recording: jump, truths: trueDropJump(jump, limb) };
      }
      case "dropLanding": {
        const landing = simulateDropLanding({ ...drawDropLanding(seed, bounds), ...own });
        return { recording: landing, truths: trueDropLanding(landing, limb) };
      }
      case "repeatedHops": {
        const bout = simulateHops({ ...drawHops(seed, bounds), ...own });
        return { recording: bout, truths: trueHops(bout, limb) };
      }
    }
  }
}
