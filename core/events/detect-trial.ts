import type { TestKind } from "../test-kind.ts";
import { detectCountermovement } from "./detect-countermovement.ts";
import { detectDropJump } from "./detect-drop-jump.ts";
import { detectDropLanding } from "./detect-drop-landing.ts";
import { detectHops } from "./detect-hops.ts";
import { detectSquatJump } from "./detect-squat-jump.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { withSpreads } from "./edge-spread.ts";
import type { JumpMotion } from "./jump-events.ts";
import { withOnsetDoubt } from "./onset-doubt.ts";

const detectors: Readonly<Record<TestKind, (input: DetectionInput) => JumpMotion | Undetected>> = {
  countermovementJump: detectCountermovement,
  squatJump: detectSquatJump,
  dropJump: detectDropJump,
  repeatedHops: detectHops,
  dropLanding: detectDropLanding,
};

/** Finds motion and events of a trial by the rules of its test (METHODS §3, §6). */
export function detectTrial(input: DetectionInput): JumpMotion | Undetected {
  const jump = detectors[input.test](input);
  return "missing" in jump ? jump : withOnsetDoubt(withSpreads(jump, input), input.settings);
}
