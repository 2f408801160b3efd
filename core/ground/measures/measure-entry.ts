import type { TestKind } from "../test-kind.ts";
import type { UcumUnit } from "../units.ts";

/** The part of the jump a measure is shown under; also the order on screens. */
export const measureGroups = ["whole", "unweighting", "braking", "propulsion", "landing"] as const;

export type MeasureGroup = (typeof measureGroups)[number];

/** What a body-size form divides by. */
export type BodySizeForm = "PerBodyMass" | "PerBodyWeight";

/** One measure as the program knows it; what it is called and how it is defined says each language (`core/words`). */
export interface MeasureEntry<Id extends string = string> {
  /** Public identifier (METHODS §5). */
  readonly id: Id;
  readonly unit: UcumUnit;
  readonly group: MeasureGroup;
  /** Where the definition comes from. */
  readonly source: string;
  /** True when left and right are reported too, on two plates in two-leg tests. */
  readonly perLimb: boolean;
  /** Body-size forms that are reported beside it. */
  readonly forms: readonly BodySizeForm[];
  /** True for measures that inform only and never enter a criterion. */
  readonly informationOnly: boolean;
  /** The tests that have this measure. */
  readonly tests: readonly TestKind[];
  /** The identifier of the measure a body-size form was made from; absent for plain measures. */
  readonly formOf?: Id;
}

/** An entry as it is written: what is usual may be left out. */
export interface PlainEntry extends Omit<MeasureEntry, "perLimb" | "forms" | "informationOnly" | "formOf"> {
  readonly perLimb?: boolean;
  readonly forms?: readonly BodySizeForm[];
  readonly informationOnly?: boolean;
}

/** The source of a definition that is taken from nowhere else. */
export const ownChoice = "choice of this program, METHODS";
