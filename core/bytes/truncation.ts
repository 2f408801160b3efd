import type { Dialect } from "./dialect.ts";
import { hasOpenQuote } from "./fields.ts";
import { lineEndFrom, unclosedLineStart } from "./lines.ts";
import { isMissing } from "./number-text.ts";
import { type NumericBody, rowFields } from "./numeric-body.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/**
 * Rows whose last cells show how its numbers are printed. No setting: it is about how a text is written; more rows
 * would say the same.
 */
const rowsCompared = 20;

/**
 * True when the file stops inside its last row, or may have: no line end follows, and the last number is not written
 * exactly like those above it (same number of decimals, same exponent). Whole numbers and numbers printed as short as
 * possible show no such pattern, so a last row of theirs without a line end is always in doubt; so is a word that no
 * row before ends in.
 */
export function lastCellMayBeCut(text: TextBytes, body: NumericBody, dialect: Dialect): boolean {
  const starts = body.lastRowStarts;
  const lastStart = starts.at(-1);
  if (lastStart === undefined || lastStart < unclosedLineStart(text.bytes)) return false;
  const line = (start: number): string => textBetween(text, start, lineEndFrom(text.bytes, start));
  const last = line(lastStart);
  if (hasOpenQuote(last)) return true;
  if (isMissing(lastCell(last, dialect))) return true;
  if (dialect.hasTrailingDelimiter) return !/[,;|\t]\s*$/.test(last);
  const kind = dialect.kinds.at(-1);
  if (/"\s*$/.test(last)) return false;
  // A blank ends a number, unless it separates its thousands.
  if (/ $/.test(last) && kind !== "text" && dialect.marks.at(-1)?.thousands !== "space") return false;
  const before = starts.slice(-1 - rowsCompared, -1).map(line);
  if (kind === "text") return !isWholeWord(lastCell(last, dialect), body);
  const lastShape = shapeOfLastCell(last, dialect);
  return lastShape === undefined || before.some((row) => shapeOfLastCell(row, dialect) !== lastShape);
}

/** True when a row before ends in the same word and no other word of the column begins with it. */
function isWholeWord(word: string, body: NumericBody): boolean {
  const column = body.texts.at(-1);
  const index = column?.values.indexOf(word) ?? -1;
  if (column === undefined || index < 0 || word === "") return false;
  if (column.values.some((value, other) => other !== index && value.startsWith(word))) return false;
  return column.valueOfRow.indexOf(index) < body.rows - 1;
}

/** Decimals and exponent with every digit as 0: "12.34e-05" is ".00e-00"; a clock whole; undefined without decimals. */
function shapeOfLastCell(line: string, dialect: Dialect): string | undefined {
  const cell = lastCell(line, dialect);
  const isClock = dialect.kinds.at(-1) === "clock";
  const mark = isClock ? 0 : cell.indexOf(dialect.marks.at(-1)?.decimal === "comma" ? "," : ".");
  return mark < 0 ? undefined : cell.slice(mark).replace(/\d/g, "0");
}

function lastCell(line: string, dialect: Dialect): string {
  return rowFields(line, dialect).at(-1)?.trim() ?? "";
}
