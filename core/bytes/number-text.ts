export type DecimalMark = "point" | "comma";

const withPoint = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const withComma = /^[+-]?(?:\d+(?:,\d*)?|,\d+)(?:[eE][+-]?\d+)?$/;
const unicodeMinus = "\u2212";

/**
 * The number written in a cell, or NaN. Blanks around it do not matter; a number too large for a double is NaN, because
 * a recording holds none. Equal to `Number()` on the same text with a decimal point.
 */
export function parseNumberText(cell: string, decimalMark: DecimalMark): number {
  const trimmed = cell.trim();
  const text = trimmed.startsWith(unicodeMinus) ? `-${trimmed.slice(1)}` : trimmed;
  if (!(decimalMark === "comma" ? withComma : withPoint).test(text)) return Number.NaN;
  const value = Number(decimalMark === "comma" ? text.replace(",", ".") : text);
  return Number.isFinite(value) ? value : Number.NaN;
}

const missingMarks = new Set(["", "nan", "na", "n/a", "#n/a", "null", "none", "-", "--", "?", "inf", "+inf", "-inf"]);

/** True for an empty cell and for the usual words for "no value here". */
export function isMissing(cell: string): boolean {
  return missingMarks.has(cell.trim().toLowerCase());
}
