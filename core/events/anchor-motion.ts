import type { SampleSpan } from "../trial/sample-span.ts";
import type { Anchor, JumpEvents } from "./jump-events.ts";
import { anchored, type Kinematics, positionAtSample, stillOver } from "./kinematics.ts";

/** Gives a motion its velocity and position from what is known about them (METHODS §3). */
export function anchorMotion(motion: Kinematics, anchor: Anchor, events: JumpEvents): Kinematics {
  return anchorPosition(anchorVelocity(motion, anchor, events), anchor, events);
}

/** Sets the constant of velocity. */
export function anchorVelocity(motion: Kinematics, anchor: Anchor, events: JumpEvents): Kinematics {
  if (anchor.kind === "still") return stillOver(motion, anchor.window);
  if (anchor.kind === "onset") {
    return events.onset === undefined ? motion : anchored(motion, events.onset, { velocity: 0 });
  }
  const { takeoff, touchdown } = events;
  // Without a flight on the plate nothing tells the velocity, and no number is put in its place.
  if (takeoff === undefined || touchdown === undefined) return { ...motion, startVelocity: Number.NaN };
  const velocity = (motion.gravity * (touchdown - takeoff)) / motion.signal.rateHz / 2;
  return anchored(motion, takeoff, { velocity });
}

/** Sets the constant of position. */
export function anchorPosition(motion: Kinematics, anchor: Anchor, events: JumpEvents): Kinematics {
  if (anchor.kind === "still" && anchor.positionZero === "window") {
    return { ...motion, startPosition: motion.startPosition - meanPosition(motion, anchor.window) };
  }
  const zero = anchor.kind === "flight" ? events.contactTouchdown : events.onset;
  return zero === undefined ? motion : anchored(motion, zero, { position: 0 });
}

/** Mean position over the samples of a window, m. */
export function meanPosition(motion: Kinematics, window: SampleSpan): number {
  let sum = 0;
  for (let index = window.start; index < window.end; index += 1) sum += positionAtSample(motion, index);
  return sum / (window.end - window.start);
}
