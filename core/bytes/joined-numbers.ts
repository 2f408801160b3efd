import { lineEndFrom, nextLineStart } from "./lines.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** `633,21`, or `1,234.5` and `1,234,567`: one number, or several split at commas. */
const withDecimalComma = /^\s*[+-]?\d+,\d+\s*$/;
const withGroups = /^\s*[+-]?[1-9]\d{0,2}(?:,\d{3})+(?:\.\d*)?\s*$/;

/** No setting: it spares time; headers are shorter. */
const headerLinesLookedAt = 200;

/**
 * `633,21` line after line may be one column with a decimal comma or two columns of whole numbers, and `1,234.5` one
 * column with thousands marks or two. It is one column when a part behind a comma starts with a zero before another
 * digit (numbers of their own are not printed so), or when the column names above hold no comma.
 */
export function isWholeLineNumber(sample: readonly string[], text: TextBytes): boolean {
  const rows = sample.filter((line) => withDecimalComma.test(line) || withGroups.test(line));
  if (2 * rows.length < sample.length) return false;
  if (rows.some((line) => /,0\d/.test(line))) return true;
  let name: string | undefined;
  let start = 0;
  for (let line = 0; line < headerLinesLookedAt && start < text.bytes.length; line++) {
    const end = lineEndFrom(text.bytes, start);
    const content = textBetween(text, start, end);
    start = nextLineStart(text.bytes, end);
    if (isBlankLine(content) || isCommentLine(content, "comma")) continue;
    if (withDecimalComma.test(content) || withGroups.test(content)) break;
    name = content;
  }
  return name !== undefined && !name.includes(",");
}
