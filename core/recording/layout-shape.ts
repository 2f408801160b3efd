import type { Table } from "../bytes/table.ts";
import { fieldsAbove } from "./header-fields.ts";
import type { LayoutShape } from "./shape-schema.ts";

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
