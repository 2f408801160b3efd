import type { Limb } from "../ground/limb.ts";
import type { ForceColumnUnit } from "./force-units.ts";

/** One force, converted: a column, or the sum of the columns of one foot's plates. */
export interface ForceColumn {
  /** From 0, in order of the file; the first is the force's place. */
  readonly indices: readonly number[];
  /** The file's own name, or "column 3". */
  readonly name: string;
  /** False where the file names nothing. */
  readonly isNamed: boolean;
  readonly limb: Limb;
  /** Absent where no unit is known; the values are then as in the file. */
  readonly unit?: ForceColumnUnit;
  readonly unitFrom: "header" | "stated" | "unknown";
  /** Newtons, upward positive, one value a usable row. */
  readonly force: Float64Array;
}
