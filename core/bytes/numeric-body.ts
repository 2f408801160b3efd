import type { Dialect } from "./dialect.ts";
import { splitFields } from "./fields.ts";
import type { LineIndex } from "./lines.ts";
import { isMissing, parseNumberText } from "./number-text.ts";
import { plainRowReader } from "./plain-row.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import type { UnreadableCell } from "./table.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** A line in the body that is no row. */
interface OddLine {
  /** From 1. */
  readonly line: number;
  readonly fieldCount: number;
  readonly numberCount: number;
  /** How many rows stand before it. */
  readonly rowsBefore: number;
}

/** The rows of a text, from its first one on. */
export interface NumericBody {
  readonly rows: number;
  readonly columns: readonly (Float64Array | undefined)[];
  readonly lineOfRow: Uint32Array;
  readonly unreadable: readonly UnreadableCell[];
  /** In order of lines; blank lines and comments are not odd, except blank lines inside a single column. */
  readonly oddLines: readonly OddLine[];
  /** Lines with text in every number's place behind the last row. */
  readonly footerLines: readonly number[];
  /** Blank lines between rows. */
  readonly blankLinesInside: readonly number[];
}

/** Reads all lines from index `firstLine` on. Plain rows are read from bytes; every other line goes through `splitFields`. */
export function readBody(text: TextBytes, lines: LineIndex, firstLine: number, dialect: Dialect): NumericBody {
  const capacity = lines.count - firstLine;
  const columns = dialect.isNumeric.map((isNumeric) => (isNumeric ? new Float64Array(capacity) : undefined));
  const lineOfRow = new Uint32Array(capacity);
  const unreadable: UnreadableCell[] = [];
  const oddLines: OddLine[] = [];
  const blankLines: { readonly line: number; readonly rowsBefore: number }[] = [];
  const readPlainRow = plainRowReader(text.bytes, dialect, columns);
  let rows = 0;

  for (let index = firstLine; index < lines.count; index++) {
    const start = lines.starts[index]!;
    const end = lines.ends[index]!;
    const line = index + 1;
    if (readPlainRow(start, end, rows)) {
      lineOfRow[rows++] = line;
      continue;
    }
    const content = textBetween(text, start, end);
    if (isCommentLine(content)) continue;
    const isBlank = isBlankLine(content);
    if (isBlank && dialect.columnCount > 1) {
      blankLines.push({ line, rowsBefore: rows });
      continue;
    }
    const fields = rowFields(content, dialect);
    const values = fields.map((field) => parseNumberText(field, dialect.decimalMark));
    if (fields.length !== dialect.columnCount) {
      const numberCount = values.filter((value) => !Number.isNaN(value)).length;
      oddLines.push({ line, fieldCount: fields.length, numberCount, rowsBefore: rows });
      continue;
    }
    columns.forEach((column, position) => {
      if (column === undefined) return;
      const value = values[position]!;
      column[rows] = value;
      if (Number.isNaN(value))
        unreadable.push({ row: rows, column: position, line, text: shortened(fields[position]!) });
    });
    lineOfRow[rows++] = line;
  }

  const footerLines: number[] = [];
  while (rows > 0 && columns.every((column) => column === undefined || Number.isNaN(column[rows - 1]))) {
    rows--;
    const cells: UnreadableCell[] = [];
    while (unreadable.length > 0 && unreadable.at(-1)!.row === rows) cells.push(unreadable.pop()!);
    if (cells.some((cell) => cell.text !== "")) footerLines.unshift(lineOfRow[rows]!);
  }
  return {
    rows,
    columns: columns.map((column) => column?.subarray(0, rows)),
    lineOfRow: lineOfRow.subarray(0, rows),
    unreadable,
    oddLines,
    footerLines,
    blankLinesInside: blankLines.filter((blank) => blank.rowsBefore < rows).map((blank) => blank.line),
  };
}

/** Cells of a line of the body, without the empty one behind a trailing delimiter. */
export function rowFields(line: string, dialect: Dialect): string[] {
  const fields = splitFields(line, dialect.delimiter);
  if (dialect.hasTrailingDelimiter && fields.length === dialect.columnCount + 1 && isMissing(fields.at(-1)!))
    fields.pop();
  return fields;
}

function shortened(cell: string): string {
  const trimmed = cell.trim();
  return trimmed.length > 20 ? `${trimmed.slice(0, 20)}…` : trimmed;
}
