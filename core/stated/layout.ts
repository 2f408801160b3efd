import type { DecimalMark } from "../bytes/number-text.ts";
import type { ColumnKey, ForceUnit } from "./session.ts";

/** What files of one kind have in common, whatever was measured in them. */
export interface LayoutShape {
  readonly delimiter: "comma" | "semicolon" | "tab" | "pipe" | "spaces" | "none";
  readonly decimalMark: DecimalMark;
  /** In order of the file, as written; "" where it names nothing. */
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
  /** Keys of the lines above the column names, in order, lower case. */
  readonly headerKeys: readonly string[];
}

/** What a person said once about files of a shape. */
export interface RememberedAnswers {
  readonly rateHz?: number;
  readonly unit?: ForceUnit;
  readonly decimalMark?: DecimalMark;
  readonly time?: ColumnKey;
  readonly left?: ColumnKey;
  readonly right?: ColumnKey;
  readonly total?: ColumnKey;
  readonly platesStated?: boolean;
  readonly swapPlates?: boolean;
  readonly resample?: boolean;
  readonly resampleHz?: number;
}

/** A saved layout: applied to every file of its shape and to no other. */
export interface Layout {
  readonly schemaVersion: 1;
  readonly name: string;
  readonly shape: LayoutShape;
  readonly answers: RememberedAnswers;
}
