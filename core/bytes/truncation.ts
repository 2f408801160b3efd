import type { Dialect } from "./dialect.ts";
import type { LineIndex } from "./lines.ts";
import { type NumericBody, rowFields } from "./numeric-body.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** Rows whose last cells show how its numbers are printed. */
const rowsCompared = 20;

/**
 * True when the file stops inside its last row, or may have: no line end follows, and the last number is not written
 * exactly like those above it (same number of decimals, same exponent). Whole numbers and numbers printed as short as
 * possible show no such pattern, so a last row of theirs without a line end is always in doubt.
 */
export function lastCellMayBeCut(text: TextBytes, lines: LineIndex, body: NumericBody, dialect: Dialect): boolean {
  const lastRow = body.rows - 1;
  if (lines.lastIsClosed || body.lineOfRow[lastRow] !== lines.count) return false;
  const last = lineOf(text, lines, body, lastRow);
  if (/[\s;"]$/.test(last)) return false;
  const lastShape = shapeOfLastCell(last, dialect);
  if (lastShape === undefined) return true;
  for (let row = Math.max(0, lastRow - rowsCompared); row < lastRow; row++) {
    if (shapeOfLastCell(lineOf(text, lines, body, row), dialect) !== lastShape) return true;
  }
  return false;
}

function lineOf(text: TextBytes, lines: LineIndex, body: NumericBody, row: number): string {
  const index = body.lineOfRow[row]! - 1;
  return textBetween(text, lines.starts[index]!, lines.ends[index]!);
}

/** Decimals and exponent with every digit as 0: "12.34e-05" is ".00e-00"; undefined without decimals. */
function shapeOfLastCell(line: string, dialect: Dialect): string | undefined {
  const cell = rowFields(line, dialect).at(-1)?.trim() ?? "";
  const mark = cell.indexOf(dialect.decimalMark === "comma" ? "," : ".");
  return mark < 0 ? undefined : cell.slice(mark).replace(/\d/g, "0");
}
