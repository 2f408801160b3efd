import type { Dialect } from "./dialect.ts";
import type { TextEncoding } from "./text-bytes.ts";

/** A cell that holds no number (or clock) although its column does. */
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

/** A line such as `Rate: 1000 Hz` above or below the rows, as written; what it means is decided later. */
export interface TextField {
  readonly key: string;
  readonly value: string;
  /** Line of the file, from 1. */
  readonly line: number;
}

/** A column of wall-clock time in seconds since the midnight at which the day of its first stamp began. */
export interface ClockColumn {
  /** True where the stamps carry a date; without one, a clock that falls back has passed midnight. */
  readonly hasDate: boolean;
  /** The day of the first stamp as `2026-01-17`; "" without dates. */
  readonly date: string;
  /** One a row, NaN where a cell is unreadable. */
  readonly seconds: Float64Array;
}

/** A column of text; the cell of a row is `values[valueOfRow[row]]`. */
export interface TextColumn {
  /** Every different cell once, in order of appearance. */
  readonly values: readonly string[];
  readonly valueOfRow: Uint32Array;
}

/** A delimited text as columns of numbers, before anybody says what they mean. */
export interface Table {
  readonly encoding: TextEncoding;
  readonly dialect: Dialect;
  /** Lines before the first row of numbers, column names included. */
  readonly headerLines: number;
  /** Those lines as text, for hints. */
  readonly header: readonly string[];
  /** What the header block and the lines below the rows say as key and value, in order of lines. */
  readonly headerFields: readonly TextField[];
  readonly footerFields: readonly TextField[];
  /**
   * One a column, as written, without a unit that stands in a row of its own; names over two lines are joined by a
   * blank, the upper one (a plate) first; "" where the file names nothing. A name may occur several times.
   */
  readonly names: readonly string[];
  /** From a row of units under the names; "" where there is none. */
  readonly units: readonly string[];
  readonly rows: number;
  /** Lines of numbers that are not among the rows: torn, of another width, behind a comment mark or cut off. */
  readonly rowsDropped: number;
  /** Lines of the whole file. */
  readonly lineCount: number;
  /** One array of `rows` numbers a column, NaN where a cell is unreadable; undefined for a column of text or clocks. */
  readonly columns: readonly (Float64Array | undefined)[];
  /** By column; undefined where it is no clock. */
  readonly clocks: readonly (ClockColumn | undefined)[];
  /** By column; undefined where it is not text. */
  readonly texts: readonly (TextColumn | undefined)[];
  /** Line of the file of each row, from 1. */
  readonly lineOfRow: Uint32Array;
  /** In order of rows. */
  readonly unreadable: readonly UnreadableCell[];
}
