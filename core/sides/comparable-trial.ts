import type { Limb, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Measure } from "../measures/measure.ts";
import type { FeetInDoubt } from "../recording/recording.ts";

/** What the comparison of sides needs of one trial. */
export interface ComparableTrial {
  readonly test: TestKind;
  readonly limb: Limb;
  readonly measures: readonly Measure[];
  /** Excluded by a person, or held until one keeps it; such trials are never used. */
  readonly excluded: boolean;
  /** The plate that carried each limb; absent where one plate carried both. */
  readonly carriedBy?: { readonly left?: string; readonly right?: string };
  /** Absent where it is known which foot stood where, or where that is no question. */
  readonly feet?: FeetInDoubt;
  /** The limb that the layout gives each plate, in the order of the plates; sides of measures follow it. */
  readonly plateLimbs: readonly Limb[];
  /** The plate that alone carried a single-leg trial, by its place from 1; absent on one plate. */
  readonly loadedPlate?: number;
  /** Height of the box stepped off, metres; absent where nobody stated it or no box was used. */
  readonly dropHeightMetres?: number;
  /** The leg that stepped off the box first; absent where nobody stated it or no box was used. */
  readonly leadingLeg?: Side;
}
