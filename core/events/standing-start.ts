import { anchorPosition, anchorVelocity } from "./anchor-motion.ts";
import type { DetectionInput } from "./detection.ts";
import type { Anchor } from "./jump-events.ts";
import { integrate, type Kinematics } from "./kinematics.ts";

/** The motion of a jump that starts from standing, before its onset is known. */
export interface StandingStart {
  readonly anchor: Anchor;
  /** Velocity is known where somebody stood still; position is not yet. */
  readonly moving: Kinematics;
  /** First sample that was integrated. */
  readonly start: number;
  /** First sample the jump itself may begin at. */
  readonly earliest: number;
}

/** Integrates a standing start from its quiet standing, else from the start of the trial (METHODS §3). */
export function startStanding({ total, cut, weight, settings }: DetectionInput): StandingStart {
  const { still, newtons } = weight;
  const start = still?.start ?? cut.quietBefore[0]?.start ?? cut.span.start;
  const anchor: Anchor =
    still === undefined ? { kind: "onset" } : { kind: "still", window: still, positionZero: "onset" };
  const moving = anchorVelocity(integrate(total, { start, end: cut.span.end }, newtons, settings.gravity), anchor, {});
  return { anchor, moving, start, earliest: still?.end ?? start };
}

/** The motion with its onset known: position zero there, and velocity too where nobody stood still. */
export function motionFromOnset({ anchor, moving }: StandingStart, onset: number): Kinematics {
  const motion = anchor.kind === "onset" ? anchorVelocity(moving, anchor, { onset }) : moving;
  return anchorPosition(motion, anchor, { onset });
}
