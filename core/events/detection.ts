import type { Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** Body weight as the detectors need it. */
export interface DetectionWeight {
  /** NaN where nothing tells it: velocity and position are none then, and only contact events are found. */
  readonly newtons: number;
  /** Standard deviation of force in the weighing window, newtons; 0 where nobody stood still. */
  readonly deviation: number;
  /** Quiet standing in which mean velocity is zero; absent where nobody stood still. */
  readonly still?: SampleSpan;
}

/** The force of one limb on its own plate. */
export interface LimbSignal extends ForceSignal {
  readonly side: Side;
}

/** What the events of one trial are found from. */
export interface DetectionInput {
  readonly test: TestKind;
  readonly total: ForceSignal;
  /** Left and right on their own plates; empty otherwise. */
  readonly limbs: readonly LimbSignal[];
  readonly cut: JumpCut;
  readonly weight: DetectionWeight;
  readonly edits: readonly EventEdit[];
  readonly settings: Settings;
}

/** Why events could not be found, and where. */
export interface Undetected {
  readonly missing: "onset" | "turning point" | "take-off" | "touchdown" | "hop";
  readonly atSample: number;
}
