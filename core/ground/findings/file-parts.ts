import type { Statements } from "../answer.ts";

/** A column of a file by its place from 1 and the name it has there; "" where the file names nothing. */
export interface NamedColumn {
  readonly position: number;
  readonly name: string;
}

/** A line above the rows of a file, from 1, as written. */
export interface WrittenLine {
  readonly line: number;
  readonly written: string;
}

/** Who says something about a file: a person, a saved layout, or a line of the file. */
export type StatementSource =
  | { readonly from: "person" }
  | { readonly from: "layout"; readonly name: string }
  | ({ readonly from: "line" } & WrittenLine);

/** A line that speaks of the sampling rate without a unit; without a number where it has two readings. */
export interface UnitlessRate extends WrittenLine {
  readonly number?: number;
}

/** Units of force that a file or a person may name. */
export type NamedForceUnit = Statements["unit"] | "BW" | "%BW" | "N/kg";

/** Units of time that a column may be counted in. */
export type NamedTimeUnit = "s" | "ms" | "µs";
