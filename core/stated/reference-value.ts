import type { Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { PublishedUnit } from "../ground/units.ts";

/** A value from before the injury or the operation, entered by a person. */

export interface ReferenceValue {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  readonly measure: string;
  /** The box the value is from, metres; a value of a test from a box counts only for its own box. */
  readonly dropHeightMetres?: number;
  readonly side: Side;
  readonly value: number;
  readonly unit: PublishedUnit;
  /** ISO date (YYYY-MM-DD). */
  readonly date: string;
  /** "pre-injury" or "pre-operative". */
  readonly origin: "pre-injury" | "pre-operative";
}
