import type { Limb } from "../limb.ts";
import type { ColumnKey, ForceUnit } from "../session.ts";

/** What a person has said about a file's columns. Absent parts are recognised, or asked for. */
export interface LayoutAnswers {
  readonly rateHz?: number;
  readonly unit?: ForceUnit;
  readonly time?: ColumnKey;
  readonly left?: ColumnKey;
  readonly right?: ColumnKey;
  readonly total?: ColumnKey;
  /** True when a person stated which column is which foot (then the plates count as stated by the tester). */
  readonly platesStated?: boolean;
}

/** One column as it was understood. */
export interface ColumnReading {
  /** From 1. */
  readonly position: number;
  readonly name: string;
  readonly role: "time" | "force" | "unused";
  readonly limb?: Limb;
  /** As written in the file or stated by a person; "" where the file is silent. */
  readonly unit: string;
  /** Why it was read this way, in words. */
  readonly reason: string;
}

/** What was understood of a delimited text file; shown to the person who imports it. */
export interface TableReading {
  readonly encoding: "UTF-8" | "Windows-1252" | "UTF-16LE" | "UTF-16BE";
  readonly delimiter: "comma" | "semicolon" | "tab" | "spaces" | "none";
  readonly decimalMark: "point" | "comma";
  /** Lines before the numeric body, the header line included. */
  readonly headerLines: number;
  readonly rows: number;
  readonly columns: readonly ColumnReading[];
  readonly rateHz?: number;
  readonly rateFrom: "time column" | "stated" | "unknown";
  readonly forceUnit?: ForceUnit;
  readonly forceUnitFrom: "header" | "stated" | "unknown";
}
