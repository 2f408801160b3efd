import type { ColumnKey } from "../column-key.ts";
import type { ForceUnit } from "../force-units.ts";

/** What a person has said about a C3D file; platforms stand where a table has columns. */
export interface C3dAnswers {
  readonly rateHz?: number;
  readonly unit?: ForceUnit;
  /** A C3D file has no time column; "none" agrees with that. */
  readonly time?: ColumnKey;
  /** The platform of a foot by number or name ("force platform 2"); several joined by plus signs are added. */
  readonly left?: ColumnKey;
  readonly right?: ColumnKey;
  readonly total?: ColumnKey;
  /** True when a person stated which platform is which foot. */
  readonly platesStated?: boolean;
  /** True when the feet stood on each other's platforms, whatever named them. */
  readonly swapPlates?: boolean;
  /** A saved layout that gave the platforms above. */
  readonly layout?: { readonly name: string; readonly provesPlates: boolean };
}
