import type { DecimalMark } from "../bytes/number-text.ts";
import type { ColumnReading } from "./request.ts";

/** What decimals start with: "decimal comma", or "decimal comma (column 1: point)" where columns differ. */
export function decimalMarkWords(common: DecimalMark, columns: readonly ColumnReading[]): string {
  const others = columns.filter(({ decimalMark }) => decimalMark !== undefined && decimalMark !== common);
  if (others.length === 0) return `decimal ${common}`;
  const positions = others.map(({ position }) => position).join(", ");
  return `decimal ${common} (column${others.length === 1 ? "" : "s"} ${positions}: ${common === "point" ? "comma" : "point"})`;
}

/** What became of the lines of numbers: "4738 rows kept, none left out". */
export function rowCountWords(rowsKept: number, rowsDropped: number): string {
  const kept = `${rowsKept} ${rowsKept === 1 ? "row" : "rows"} kept`;
  return `${kept}, ${rowsDropped === 0 ? "none" : rowsDropped} left out`;
}
