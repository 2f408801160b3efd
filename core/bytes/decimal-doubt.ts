import type { Dialect } from "./dialect.ts";
import { lineEndFrom, longestLineBytes, nextLineStart } from "./lines.ts";
import { decimalMarkProvedBy } from "./number-text.ts";
import { rowFields } from "./numeric-body.ts";
import type { BodyLine } from "./row-columns.ts";
import { isCommentLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** A number that has two readings in a file where no other number settles which one is meant. */
export interface DecimalDoubt {
  readonly line: number;
  readonly cell: string;
}

/** Of a long file this many lines are searched for a number that settles it. */
const linesSearched = 20_000;

/**
 * `1.234` may be 1.234 or 1234. One number that has a single reading ("0.5", "12.34", "1.234,5") settles the whole file.
 * A comma that separates the columns cannot be a decimal mark, so there the point is one.
 */
export function findDecimalDoubt(text: TextBytes, first: BodyLine, dialect: Dialect): DecimalDoubt | undefined {
  if (dialect.delimiter === "comma" && dialect.decimalMark === "point" && dialect.thousandsMark === "none") {
    return undefined;
  }
  let doubt: DecimalDoubt | undefined;
  let { start, line } = first;
  for (; line < first.line + linesSearched && start < text.bytes.length; line++) {
    const end = lineEndFrom(text.bytes, start);
    const content = end - start > longestLineBytes ? "" : textBetween(text, start, end);
    start = nextLineStart(text.bytes, end);
    if (isCommentLine(content, dialect.delimiter)) continue;
    const fields = rowFields(content, dialect);
    if (fields.length !== dialect.columnCount) continue;
    for (const [column, kind] of dialect.kinds.entries()) {
      if (kind !== "number") continue;
      const proved = decimalMarkProvedBy(fields[column]!);
      if (proved === dialect.decimalMark) return undefined;
      if (proved === "unclear") doubt ??= { line, cell: fields[column]!.trim() };
    }
  }
  return doubt;
}
