import { parseClockText } from "./clock-text.ts";
import type { Dialect } from "./dialect.ts";
import { lineEndFrom, longestLineBytes, nextLineStart } from "./lines.ts";
import { isMissing } from "./number-text.ts";
import { isNumber, isRowInAnyMarks, rowFields } from "./numeric-body.ts";
import type { BodyLine } from "./row-columns.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** Where the rows start. */
interface FirstRow {
  readonly first: BodyLine;
  /** The lines before it. */
  readonly header: readonly string[];
}

/**
 * Facts such as `mass;69,4` look like rows of a word and a number; the names below them stand this near. No setting:
 * it spares time; headers are shorter.
 */
const rowsBeforeNames = 200;

/** The first line that is a row and is followed by another; undefined where there is none. */
export function findFirstRow(text: TextBytes, dialect: Dialect): FirstRow | undefined {
  const { bytes } = text;
  const header: string[] = [];
  let found: BodyLine | undefined;
  let previous: BodyLine | undefined;
  /** The first line below the names that is a row in some notation. */
  let possible: BodyLine | undefined;
  let line = 1;
  for (let start = 0; start < bytes.length; line++) {
    const end = lineEndFrom(bytes, start);
    const content = textBetween(text, start, Math.min(end, start + longestLineBytes));
    const here = { start, line };
    start = nextLineStart(bytes, end);
    header.push(content);
    if (isBlankLine(content) || isCommentLine(content, dialect.delimiter)) continue;
    if (found !== undefined) {
      if (areNames(content, dialect)) [found, previous, possible] = [undefined, undefined, undefined];
      else if (line - found.line >= rowsBeforeNames) break;
      continue;
    }
    if (areNames(content, dialect)) possible = undefined;
    else if (isRowInAnyMarks(rowFields(content, dialect), dialect)) possible ??= here;
    const isRow = isNumericRow(content, dialect);
    if (isRow && previous !== undefined) {
      found = previous;
      if (!dialect.kinds.includes("text")) break;
    }
    previous = isRow ? here : undefined;
  }
  if (found === undefined) return undefined;
  // What fits the rows and stands below the names is among the rows, where a damaged line between them is named.
  const first = possible ?? found;
  return { first, header: header.slice(0, first.line - 1) };
}

/** A row has the right number of cells, a number in one of its number columns and nothing but gaps in the others. */
function isNumericRow(line: string, dialect: Dialect): boolean {
  const fields = rowFields(line, dialect);
  if (fields.length !== dialect.columnCount) return false;
  let numbers = 0;
  for (const [position, field] of fields.entries()) {
    const kind = dialect.kinds[position];
    if (kind === "text") continue;
    const isRight = kind === "clock" ? parseClockText(field) !== undefined : isNumber(field, dialect, position);
    if (isRight && kind === "number") numbers++;
    else if (!isRight && !isMissing(field)) return false;
  }
  return numbers > 0;
}

/** Words in every column of numbers and clocks. */
function areNames(line: string, dialect: Dialect): boolean {
  const fields = rowFields(line, dialect);
  if (fields.length !== dialect.columnCount) return false;
  return fields.every(
    (field, position) =>
      dialect.kinds[position] === "text" || (/\p{L}{2}|^\p{L}$/u.test(field.trim()) && !/\d{3}/.test(field)),
  );
}
