import type { EventName } from "../ground/event-name.ts";
import type { Side } from "../ground/limb.ts";

/** An instant in a trial. */
export interface TrialEvent {
  readonly name: EventName;
  /** Fractional sample, 0-based, from the start of the recording. */
  readonly sample: number;
  /** Seconds from the first sample: sample / rate. */
  readonly time: number;
  readonly from: "detected" | "edited";
  /** Standard uncertainty (k = 1) in seconds, where one can be derived. */
  readonly uncertainty?: number;
  /** Counted from 1; only where a test has several contacts. */
  readonly contactIndex?: number;
  /** Only for the events of one limb on its own plate. */
  readonly side?: Side;
  /** In the place of `side` while nobody knows which foot stood on that plate: its place, counted from 1. */
  readonly plate?: number;
}

/** True for the events of one limb on its own plate; the others are those of the body. */
export function isOfLimb({ side, plate }: Pick<TrialEvent, "side" | "plate">): boolean {
  return side !== undefined || plate !== undefined;
}
