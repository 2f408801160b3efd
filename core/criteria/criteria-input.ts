import type { Gate } from "../gate/gate.ts";
import type { InvolvedSide, Limb } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { ComparableTrial } from "../sides/comparable-trial.ts";
import type { Comparison } from "../sides/comparison.ts";
import type { OtherInjury } from "../stated/other-injury.ts";
import type { ReferenceValue } from "../stated/reference-value.ts";

/** Everything the evaluation of a set needs of one session. */
export interface CriteriaInput {
  readonly comparisons: readonly Comparison[];
  readonly involved: InvolvedSide;
  /** Injuries on that day that involve no side. */
  readonly otherInjuries?: readonly OtherInjury[];
  readonly references: readonly ReferenceValue[];
  readonly gate: Gate;
  /** Every trial of the session that has measures, excluded ones too: they count as attempts. */
  readonly trials: readonly ComparableTrial[];
  /** How many more trials the session's protocol allows; absent in a session without one. */
  readonly trialsAllowed?: (asked: AskedTrials, limb: Limb) => number;
}

/** Trials of one test on one leg or both, from one box where the test starts from one. */
export interface AskedTrials {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  readonly dropHeightMetres?: number;
}
