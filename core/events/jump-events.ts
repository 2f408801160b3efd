import type { Side } from "../limb.ts";
import type { Kinematics } from "./kinematics.ts";

/** Events of a standing jump as fractional samples from the start of the recording. */
export interface JumpEvents {
  readonly onset: number;
  readonly endOfUnweighting: number;
  readonly lowestPosition: number;
  readonly takeoff: number;
  /** Absent when the recording holds no landing. */
  readonly touchdown?: number;
  /** Absent when the recording ends before velocity returns to zero. */
  readonly landingEnd?: number;
}

/** Contact events of one limb on its own plate, fractional samples. */
export interface LimbContact {
  readonly side: Side;
  readonly takeoff?: number;
  readonly touchdown?: number;
}

/** Everything the measures of a standing jump are made from. */
export interface JumpMotion {
  /** Position is zero at onset; velocity by the weighing window, or zero at onset without one. */
  readonly motion: Kinematics;
  readonly events: JumpEvents;
  readonly contacts: readonly LimbContact[];
}
