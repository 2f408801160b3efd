import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Status } from "../ground/status.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { UcumUnit } from "../ground/units.ts";

/** One declarative criterion. */
export type Criterion = {
  /** Stable public identifier. */
  readonly id: string;
  /** Quantity first, in full words. */
  readonly label: string;
  /** The published source, or "common practice". */
  readonly source: string;
  /** What a reader must know about the threshold, said beside every status; a plain sentence. */
  readonly note?: string;
  readonly test: TestKind;
  /** The box it belongs to, metres; trials from another box never count. Absent: trials from one box, whichever. */
  readonly dropHeightMetres?: number;
} & (
  | {
      readonly kind: "symmetry";
      readonly legs: "both" | "single";
      readonly measure: MeasureId;
      /** Least index in per cent. */
      readonly atLeastPercent: number;
    }
  | {
      /** Single-leg value of the involved leg against the uninvolved leg's pre-injury or pre-operative value. */
      readonly kind: "against-reference";
      readonly legs: "single";
      readonly measure: MeasureId;
      readonly atLeastPercent: number;
    }
  | {
      /** The value of both legs together, or of the involved leg (of either where both knees are involved). */
      readonly kind: "absolute";
      readonly legs: "both" | "single";
      readonly measure: MeasureId;
      readonly atLeast: number;
      /** Of the threshold; that of the measure. */
      readonly unit: UcumUnit;
    }
);

/** Whom a set of criteria was set for. */
export interface CriteriaPopulation {
  readonly sex?: "female" | "male";
  /** Age band in whole years, both ends included. */
  readonly age?: { readonly from: number; readonly to: number };
  /** A kind of sport in words, and the words by which an athlete's entry is known to be one. */
  readonly sports?: { readonly name: string; readonly words: readonly string[] };
  /** Level of play, in the words of the athletes' entries. */
  readonly level?: string;
}

/** A set of criteria as a clinic keeps it. */
export interface CriteriaSet {
  readonly id: string;
  readonly name: string;
  readonly version: number;
  readonly author: string;
  readonly stage: string;
  /** The population it was set for, in words; a mismatch with the athlete is said. */
  readonly population: string;
  /** The same as far as it can be held against an athlete; absent parts are not narrowed down. */
  readonly setFor?: CriteriaPopulation;
  readonly criteria: readonly Criterion[];
}

/** A criterion as it stands today. */
export interface CriterionResult {
  readonly criterion: Criterion;
  readonly status: Status;
  /**
   * Words that belong directly behind the status word, so that no status stands alone where the index at the estimate
   * is so high that the comparison limb is the lower one; absent where the status may. the words of a status join them.
   */
  readonly qualifier?: string;
  /** What was held against the threshold, where there is something: per cent, or a value in the criterion's unit. */
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
