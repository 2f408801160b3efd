import { type DecimalMark, isMissing, parseNumberText, type ThousandsMark, thousandsMarkIn } from "./number-text.ts";

/** How the numbers of one column are written. */
export interface NumberMarks {
  readonly decimal: DecimalMark;
  readonly thousands: ThousandsMark;
}

/** The number in a cell under a column's marks; NaN where it is none. */
export function parseMarkedNumber(cell: string, { decimal, thousands }: NumberMarks): number {
  return parseNumberText(cell, decimal, thousands);
}

/** True when a cell is a number in some notation: with a point or a comma, with or without thousands marks. */
export function isNumberInAnyMarks(cell: string): boolean {
  return isNumberWith(cell, "point") || isNumberWith(cell, "comma");
}

/** True when a cell is a number with this decimal mark, whatever separates its thousands. */
export function isNumberWith(cell: string, decimal: DecimalMark): boolean {
  return !Number.isNaN(parseNumberText(cell, decimal)) || thousandsMarkIn(cell, decimal) !== undefined;
}

/** True where a cell is a number in some notation, or nothing at all. */
export function isNumberOrMissing(cell: string): boolean {
  return isMissing(cell) || isNumberInAnyMarks(cell);
}
