/** What a line above the column names may tell about a recording. */
export type HeaderHintKind = "rate" | "mass" | "date" | "side" | "test" | "athlete" | "dropHeight" | "unit" | "samples";

/**
 * One thing the header says. Nothing but the rate, the unit, the mass behind body weights and the number of samples is
 * used in reading; the rest is offered to the person who imports the file.
 */
export interface HeaderHint {
  readonly kind: HeaderHintKind;
  /**
   * In `unit`; a side is left, right or both, a test its public identifier, a date ISO. Absent where the line does not
   * say it in full: a number without its unit, a date that can be read two ways.
   */
  readonly value?: number | string;
  /** The bare number as written, where the line gives no unit for it. */
  readonly numberWithoutUnit?: number;
  /** Of `value`: "Hz", "kg", "m", "1" for a count, "" for words. */
  readonly unit: "Hz" | "kg" | "m" | "1" | "";
  /** Line of the file, from 1. */
  readonly line: number;
  /** The line as written. */
  readonly written: string;
}
