import type { Dialect } from "./dialect.ts";
import type { TextEncoding } from "./text-bytes.ts";

/** A cell that holds no number although its column does. */
export interface UnreadableCell {
  /** From 0. */
  readonly row: number;
  /** From 0. */
  readonly column: number;
  /** Line of the file, from 1. */
  readonly line: number;
  /** The cell as written, shortened. */
  readonly text: string;
}

/** A delimited text as columns of numbers, before anybody says what they mean. */
export interface Table {
  readonly encoding: TextEncoding;
  readonly dialect: Dialect;
  /** Lines before the first row of numbers, column names included. */
  readonly headerLines: number;
  /** Those lines as text, for hints. */
  readonly header: readonly string[];
  /** One a column, as written, without a unit that stands in a row of its own; "" where the file names nothing. */
  readonly names: readonly string[];
  /** From a row of units under the names; "" where there is none. */
  readonly units: readonly string[];
  readonly rows: number;
  /** One array of `rows` numbers a column, NaN where a cell is unreadable; undefined for a column of text. */
  readonly columns: readonly (Float64Array | undefined)[];
  /** Line of the file of each row, from 1. */
  readonly lineOfRow: Uint32Array;
  /** In order of rows. */
  readonly unreadable: readonly UnreadableCell[];
}
