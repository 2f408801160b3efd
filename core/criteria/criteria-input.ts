import type { InvolvedSide } from "../limb.ts";
import type { ComparableTrial, Comparison } from "../sides/comparison.ts";
import type { ReferenceValue } from "./criterion.ts";
import type { Gate } from "./gate.ts";

/** Everything the evaluation of a set needs of one session. */
export interface CriteriaInput {
  readonly comparisons: readonly Comparison[];
  readonly involved: InvolvedSide;
  readonly references: readonly ReferenceValue[];
  readonly gate: Gate;
  /** Every trial of the session, excluded ones too: they count as attempts. */
  readonly trials: readonly ComparableTrial[];
}
