import { type BodyEnd, trimEnd } from "./body-end.ts";
import { parseClockText } from "./clock-text.ts";
import type { Dialect } from "./dialect.ts";
import { hasOpenQuote, splitFields } from "./fields.ts";
import { lineEndFrom, longestLineBytes, nextLineStart, unclosedLineStart } from "./lines.ts";
import { isNumberInAnyMarks, isNumberOrMissing, parseMarkedNumber } from "./number-marks.ts";
import { isMissing } from "./number-text.ts";
import { plainRowReader } from "./plain-row.ts";
import { type BodyLine, RowColumns } from "./row-columns.ts";
import { isBlankLine, isCommentLine, withoutCommentMark } from "./skipped-lines.ts";
import type { ClockColumn, TextColumn } from "./table.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** A line in the body that is no row. */
export interface OddLine {
  /** From 1. */
  readonly line: number;
  readonly text: string;
  readonly fieldCount: number;
  readonly numberCount: number;
  /** How many rows stand before it. */
  readonly rowsBefore: number;
  /** True for a row of numbers behind a comment mark. */
  readonly isComment: boolean;
}

/** The rows of a text, from its first one on. */
export interface NumericBody extends BodyEnd {
  readonly columns: readonly (Float64Array | undefined)[];
  readonly clocks: readonly (ClockColumn | undefined)[];
  readonly texts: readonly (TextColumn | undefined)[];
  readonly lineOfRow: Uint32Array;
  /** Lines of the text. */
  readonly lineCount: number;
  /** In order of lines; blank lines and comments are not odd, except blank lines inside a single column. */
  readonly oddLines: readonly OddLine[];
  /** Blank lines between rows. */
  readonly blankLinesInside: readonly number[];
  /** Where the last rows start in the bytes, in order. */
  readonly lastRowStarts: readonly number[];
}

/**
 * A quoted cell may run over this many further lines. No setting: it limits what a lost quotation mark can take away.
 */
const mostJoinedLines = 8;

/** Odd lines kept with their text; of more only the count matters. No setting: it spares memory. */
const mostTextKept = 1000;

/**
 * Reads all lines from the one at byte `firstStart` on. Plain rows are read from bytes; every other line goes through
 * `splitFields`.
 */
export function readBody(text: TextBytes, first: BodyLine, dialect: Dialect): NumericBody {
  const { bytes } = text;
  const rows = new RowColumns(text, dialect, bytes.length - first.start);
  const oddLines: OddLine[] = [];
  const blankLines: { readonly line: number; readonly rowsBefore: number }[] = [];
  const plainLimit = unclosedLineStart(bytes) - 1;
  const readPlainRow = plainRowReader(bytes, dialect, rows.cells);
  let { start, line } = first;

  while (start < bytes.length) {
    rows.reserve();
    let end = start < plainLimit ? readPlainRow(start, rows.count, rows.columns) : -1;
    if (end >= 0) rows.acceptPlain(start, line);
    else {
      end = lineEndFrom(bytes, start);
      const content = textBetween(text, start, Math.min(end, start + longestLineBytes));
      const record = end - start > longestLineBytes ? undefined : readRecord(content, end);
      if (record !== undefined) {
        rows.accept(record.fields, { start, line });
        line += record.moreLines;
        end = record.end;
      } else if (isBlankLine(content) && dialect.columnCount > 1) blankLines.push({ line, rowsBefore: rows.count });
      else addOdd(content);
    }
    start = nextLineStart(bytes, end);
    line++;
  }

  /** A line (with the lines a quoted cell runs over) as the cells of a row; undefined where it is none. */
  function readRecord(content: string, end: number): { fields: string[]; end: number; moreLines: number } | undefined {
    if (isCommentLine(content, dialect.delimiter)) return undefined;
    const fields = rowFields(content, dialect);
    let joined = content;
    let lastEnd = end;
    for (let more = 1; hasOpenQuote(joined) && more <= mostJoinedLines && lastEnd < bytes.length; more++) {
      const next = nextLineStart(bytes, lastEnd);
      lastEnd = lineEndFrom(bytes, next);
      if (lastEnd - start > longestLineBytes) break;
      joined += `\n${textBetween(text, next, lastEnd)}`;
      if (hasOpenQuote(joined)) continue;
      const cells = rowFields(joined, dialect);
      if (!isCompleteRow(cells, dialect)) break;
      return { fields: cells, end: lastEnd, moreLines: more };
    }
    const isBlank = isBlankLine(content) && dialect.columnCount > 1;
    return fields.length === dialect.columnCount && !isBlank ? { fields, end, moreLines: 0 } : undefined;
  }

  function addOdd(content: string): void {
    const isComment = isCommentLine(content, dialect.delimiter);
    const fields = rowFields(withoutCommentMark(content, dialect.delimiter), dialect);
    if (isComment && !looksLikeRow(fields, dialect)) return;
    oddLines.push({
      line,
      text: oddLines.length < mostTextKept ? content : "",
      fieldCount: fields.length,
      numberCount: fields.filter(isNumberInAnyMarks).length,
      rowsBefore: rows.count,
      isComment,
    });
  }

  const bodyEnd = trimEnd(rows, dialect);
  return {
    ...bodyEnd,
    ...rows.finish(bodyEnd.rows),
    lineCount: line - 1,
    oddLines,
    blankLinesInside: blankLines.filter((blank) => blank.rowsBefore < bodyEnd.rows).map((blank) => blank.line),
    lastRowStarts: rows.lastStarts(bodyEnd.rows),
  };
}

/** Cells of a line of the body, without the empty one behind a trailing delimiter. */
export function rowFields(line: string, dialect: Dialect): string[] {
  const fields = splitFields(line, dialect.delimiter);
  if (dialect.hasTrailingDelimiter && fields.length === dialect.columnCount + 1 && isMissing(fields.at(-1)!))
    fields.pop();
  return fields;
}

/** True when every column of numbers has a number. */
export function isCompleteRow(fields: readonly string[], dialect: Dialect): boolean {
  return (
    fields.length === dialect.columnCount &&
    fields.every((field, column) => dialect.kinds[column] !== "number" || isNumber(field, dialect, column))
  );
}

/** True when the cells are as many as a row's and most columns of numbers have one: a row, even if one cell is damaged. */
export function looksLikeRow(fields: readonly string[], dialect: Dialect): boolean {
  if (fields.length !== dialect.columnCount) return false;
  const columns = dialect.kinds.flatMap((kind, column) => (kind === "number" ? [column] : []));
  return 2 * columns.filter((column) => isNumber(fields[column]!, dialect, column)).length >= columns.length;
}

/** True when the cell is a number in the marks of its column. */
export function isNumber(field: string, dialect: Dialect, column: number): boolean {
  return !Number.isNaN(parseMarkedNumber(field, dialect.marks[column]!));
}

/**
 * True for a line that is a row whatever its decimal marks: as many cells as the rows have, each a number in some
 * notation, a clock where clocks stand, or nothing, and at least one number.
 */
export function isRowInAnyMarks(fields: readonly string[], dialect: Dialect): boolean {
  if (fields.length !== dialect.columnCount) return false;
  let numbers = 0;
  for (const [column, field] of fields.entries()) {
    const kind = dialect.kinds[column];
    if (kind === "text") continue;
    if (kind === "clock" && parseClockText(field) !== undefined) continue;
    if (!isNumberOrMissing(field)) return false;
    if (!isMissing(field)) numbers++;
  }
  return numbers > 0;
}
