import type { TrialWeighing } from "../events/weigh-trial.ts";
import type { Finding } from "../ground/finding.ts";
import type { Limb, Side } from "../ground/limb.ts";
import type { RecognisedTest } from "../ground/recognised-test.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { BodyMass } from "../recording/body-mass.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

/** One attempt, cut, assigned and weighed, before its events are looked for. */

export interface TrialDraft extends Omit<TrialWeighing, "findings"> {
  readonly file: { readonly path: string; readonly sha256: string };
  /** Counted from 1 within its file. */
  readonly trial: number;
  readonly test?: TestKind;
  readonly limb?: Limb;
  /** What the trace looks like by itself; absent where no test is offered. */
  readonly recognised?: RecognisedTest;
  /** Absent when the file was refused. */
  readonly prepared?: PreparedRecording;
  /** Absent when the file holds no attempt. */
  readonly cut?: JumpCut;
  /** The plate that alone carried the push, on two plates. */
  readonly loadedPlate?: string;
  /** True when only the loaded plate told the limb. */
  readonly limbFromPlates: boolean;
  /** True when the other foot carried load on its own plate while a single-leg trial was weighed. */
  readonly otherFootWeighed: boolean;
  /** Height of the box, metres, where it was stated. */
  readonly dropHeightMetres?: number;
  /** The leg that steps off the box first, where it was stated. */
  readonly leadingLeg?: Side;
  /** What the file's header says the athlete weighs. */
  readonly headerMass?: BodyMass;
  readonly edits: readonly EventEdit[];
  readonly excluded?: { readonly reason: string };
  /** A person keeps the trial although its weight differs. */
  readonly kept: boolean;
  readonly seen: boolean;
  /** A person called it a practice jump. */
  readonly practice?: true;
  readonly findings: readonly Finding[];
}
