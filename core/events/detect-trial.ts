import type { TestCourse } from "../ground/test-course.ts";
import { testFacts } from "../ground/test-kind.ts";
import { detectCountermovement } from "./detect-countermovement.ts";
import { detectDropJump } from "./detect-drop-jump.ts";
import { detectDropLanding } from "./detect-drop-landing.ts";
import { detectHops } from "./detect-hops.ts";
import { detectMidMovement } from "./detect-mid-movement.ts";
import { detectSquatJump } from "./detect-squat-jump.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { withSpreads } from "./edge-spread.ts";
import type { JumpMotion } from "./jump-events.ts";
import { withOnsetDoubt } from "./onset-doubt.ts";

type Detector = (input: DetectionInput) => JumpMotion | Undetected;

const detectors: Readonly<Record<TestCourse, Detector>> = {
  dipAndJump: fromStanding(detectCountermovement),
  holdAndJump: fromStanding(detectSquatJump),
  dropAndJump: detectDropJump,
  hops: detectHops,
  dropAndLand: detectDropLanding,
};

/**
 * A jump from standing by its own rules where somebody stood still before it, or force passes weight before the movement;
 * else as far as a recording that begins in mid-movement tells.
 */
function fromStanding(detect: Detector): Detector {
  return (input) => {
    const { weight, cut } = input;
    if (weight.still !== undefined && weight.still.start < cut.flight.start) return detect(input);
    if (weight.still !== undefined || Number.isNaN(weight.newtons)) return detectMidMovement(input);
    const jump = detect(input);
    return "missing" in jump && jump.missing === "onset" ? detectMidMovement(input) : jump;
  };
}

/** Finds motion and events of a trial by the rules of its test (METHODS §3, §6). */
export function detectTrial(input: DetectionInput): JumpMotion | Undetected {
  const jump = detectors[testFacts(input.test).course](input);
  return "missing" in jump ? jump : withOnsetDoubt(withSpreads(jump, input), input.settings);
}
