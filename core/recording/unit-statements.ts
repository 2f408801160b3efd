import type { WrittenLine } from "../ground/findings/file-parts.ts";
import type { BodyMass } from "./body-mass.ts";
import type { ForceColumnUnit, ForceUnit } from "./force-units.ts";

/** What is known about the unit of force outside the columns' names. */

export interface UnitStatements {
  readonly stated?: ForceUnit;
  /** From a line above the column names. */
  readonly header?: { readonly unit: ForceColumnUnit; readonly line: WrittenLine };
  readonly mass?: BodyMass;
  /** True where the stated unit counts although the file says another. */
  readonly overrules?: boolean;
}
