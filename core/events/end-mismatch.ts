import type { SampleSpan } from "../trial/sample-span.ts";
import { meanPosition } from "./anchor-motion.ts";
import { type Kinematics, positionAt } from "./kinematics.ts";

/**
 * Where the motion ends up in quiet standing after a jump, integrated with the weight of the standing before it alone.
 * Both would be zero without error; a weight balanced over both ends makes the velocity zero by itself.
 */
export interface EndMismatch {
  /** Mean velocity in the window after the landing, m/s. */
  readonly velocity: number;
  /** Mean position there, m from the position at onset; part of it is another posture. */
  readonly position: number;
}

/** Mean velocity and position over quiet standing after a jump that was integrated from quiet standing before it. */
export function endMismatch(motion: Kinematics, after: SampleSpan): EndMismatch {
  const last = after.end - 1;
  const seconds = (last - after.start) / motion.signal.rateHz;
  return {
    velocity: (positionAt(motion, last) - positionAt(motion, after.start)) / seconds,
    position: meanPosition(motion, after),
  };
}
