import type { Side } from "../limb.ts";
import type { TestKind } from "../test-kind.ts";
import type { UcumUnit } from "../units.ts";

/** How a criterion may stand; words on screens come from `statusLabel`. */
export type Status =
  | "met"
  | "not-met"
  | "too-close-to-call"
  | "not-measured"
  | "not-applicable"
  | "no-reference"
  | "out-of-date"
  | "withheld-today";

/** One declarative criterion. */
export type Criterion = {
  /** Stable public identifier. */
  readonly id: string;
  /** Quantity first, in full words. */
  readonly label: string;
  /** The published source, or "common practice". */
  readonly source: string;
  readonly test: TestKind;
} & (
  | {
      readonly kind: "symmetry";
      readonly legs: "both" | "single";
      readonly measure: string;
      /** Least index in per cent. */
      readonly atLeastPercent: number;
    }
  | {
      /** Single-leg value of the involved leg against the uninvolved leg's pre-injury or pre-operative value. */
      readonly kind: "against-reference";
      readonly legs: "single";
      readonly measure: string;
      readonly atLeastPercent: number;
    }
);

/** A set of criteria as a clinic keeps it. */
export interface CriteriaSet {
  readonly id: string;
  readonly name: string;
  readonly version: number;
  readonly author: string;
  readonly stage: string;
  /** The population it was set for, in words; a mismatch with the athlete is said. */
  readonly population: string;
  readonly criteria: readonly Criterion[];
}

/** A value from before the injury or the operation, entered by a person. */
export interface ReferenceValue {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  readonly measure: string;
  readonly side: Side;
  readonly value: number;
  readonly unit: UcumUnit;
  /** ISO date (YYYY-MM-DD). */
  readonly date: string;
  /** "pre-injury" or "pre-operative". */
  readonly origin: "pre-injury" | "pre-operative";
}

/** A criterion as it stands today. */
export interface CriterionResult {
  readonly criterion: Criterion;
  readonly status: Status;
  /**
   * Words that belong directly behind the status word, so that "met" never stands alone where the index is so high
   * that the comparison limb is the lower one; absent where the status may stand alone. `statusWords` joins them.
   */
  readonly qualifier?: string;
  /** The index in per cent that was held against the threshold, where there is one. */
  readonly estimate?: number;
  /** Which way an undecided estimate leans. */
  readonly lean?: "met" | "not-met";
  readonly interval?: { readonly confidence: number; readonly low: number; readonly high: number };
  /** One plain sentence: why the status is what it is, with the figures. */
  readonly reason: string;
  /** One plain sentence on whether more trials today could settle it; empty where that is no question. */
  readonly moreTrials: string;
  /** A caution that belongs to this row ("symmetry overstates recovery", "the comparison limb is lower"); empty if none. */
  readonly caution: string;
}
