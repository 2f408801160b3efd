import type { DecimalMark } from "../bytes/number-text.ts";
import type { Table } from "../bytes/table.ts";
import { fieldsAbove } from "./header-fields.ts";

/** The shape of a file: dialect, column names and units, and the keys of its header lines; no value of any of them. */
export function layoutShape(table: Table): LayoutShape {
  const { dialect, names, units } = table;
  return {
    delimiter: dialect.delimiter,
    decimalMark: dialect.decimalMark,
    columns: names.map((name, index) => ({ name: name.trim(), unit: (units[index] ?? "").trim() })),
    headerKeys: fieldsAbove(table).flatMap(({ key }) => (key === "" ? [] : [key.trim().toLowerCase()])),
  };
}

/** True where a shape names no column and no header line: many kinds of files look like that. */
export function saysLittle({ columns, headerKeys }: LayoutShape): boolean {
  return headerKeys.length === 0 && columns.every(({ name }) => name === "");
}

/** What files of one kind have in common, whatever was measured in them. */
export interface LayoutShape {
  readonly delimiter: "comma" | "semicolon" | "tab" | "pipe" | "spaces" | "none";
  readonly decimalMark: DecimalMark;
  /** In order of the file, as written; "" where it names nothing. */
  readonly columns: readonly { readonly name: string; readonly unit: string }[];
  /** Keys of the lines above the column names, in order, lower case. */
  readonly headerKeys: readonly string[];
}
