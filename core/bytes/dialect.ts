import { parseClockText } from "./clock-text.ts";
import { type Delimiter, splitFields } from "./fields.ts";
import { isWholeLineNumber } from "./joined-numbers.ts";
import { type DecimalMark, isMissing, parseNumberText, type ThousandsMark, thousandsMarkIn } from "./number-text.ts";
import { sampleLines } from "./sample-lines.ts";
import { isCommentLine } from "./skipped-lines.ts";
import type { TextBytes } from "./text-bytes.ts";

/** What the cells of a column are; a clock is wall-clock time such as 10:15:03.125. */
export type ColumnKind = "number" | "clock" | "text";

/** How the rows of a delimited text are written. */
export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  readonly thousandsMark: ThousandsMark;
  readonly columnCount: number;
  /** True when every row ends in a delimiter with nothing behind it. */
  readonly hasTrailingDelimiter: boolean;
  /** By column: what at least half of its cells are. */
  readonly kinds: readonly ColumnKind[];
  /** Mean length of the lines looked at, line end included: how many rows to expect. */
  readonly lineBytes: number;
}

interface Candidate {
  readonly dialect: Dialect;
  /** Lines that fit, each weighed by the part of its cells that are numbers or clocks. */
  readonly score: number;
  readonly rows: number;
}

/** At equal fit the earlier wins: a mark that is there for separating beats one that may be part of a number. */
const delimiters: readonly Delimiter[] = ["semicolon", "tab", "pipe", "comma", "spaces", "none"];

/** Lines that must agree, as a part of the sample: below it the text is prose with numbers in it. */
const leastRowShare = 0.2;

/** A thousands mark is believed when this many cells of the sample have it: one alone may be a damaged digit. */
const leastMarkedCells = 2;

/**
 * Finds the dialect under which most lines are rows of numbers; undefined when there are none.
 * @param stated the decimal mark, where a person has said it.
 */
export function detectDialect(text: TextBytes, stated?: DecimalMark): Dialect | undefined {
  const sample = sampleLines(text);
  let best: Candidate | undefined;
  for (const delimiter of delimiters) {
    const split = splitSample(sample, delimiter);
    for (const decimalMark of ["point", "comma"] as const) {
      if (stated !== undefined && stated !== decimalMark) continue;
      const candidate = judge(split, delimiter, decimalMark);
      if (candidate !== undefined && (best === undefined || candidate.score > best.score + 1e-9)) best = candidate;
    }
  }
  if (best === undefined || best.rows < 2 || best.rows < leastRowShare * sample.length) return undefined;
  const { dialect } = best;
  if (dialect.delimiter === "comma" && isWholeLineNumber(sample, text)) {
    const decimalMark = dialect.columnCount === 2 ? "comma" : "point";
    return judge(splitSample(sample, "none"), "none", decimalMark)?.dialect ?? dialect;
  }
  const texts = dialect.kinds.filter((kind) => kind === "text").length;
  const numbers = dialect.kinds.filter((kind) => kind === "number").length;
  const isProse = dialect.delimiter === "spaces" && 2 * texts >= dialect.columnCount;
  return numbers === 0 || isProse || 2 * texts > dialect.columnCount ? undefined : dialect;
}

interface JudgedRow {
  readonly fields: readonly string[];
  readonly kinds: readonly ColumnKind[];
}

interface SplitSample {
  readonly lines: readonly (readonly string[])[];
  readonly lineBytes: number;
}

/** The cells of every line; no lines where the delimiter separates nothing. */
function splitSample(sample: readonly string[], delimiter: Delimiter): SplitSample {
  const lines = sample.filter((line) => !isCommentLine(line, delimiter)).map((line) => splitFields(line, delimiter));
  const isUsed = delimiter === "none" || lines.some((fields) => fields.length > 1);
  return {
    lines: isUsed ? lines : [],
    lineBytes: sample.reduce((sum, line) => sum + line.length + 1, 0) / Math.max(1, sample.length),
  };
}

function judge(sample: SplitSample, delimiter: Delimiter, decimalMark: DecimalMark): Candidate | undefined {
  const rows: JudgedRow[] = [];
  const byCount = new Map<number, number>();
  for (const fields of sample.lines) {
    const kinds = fields.map((field) => kindOf(field, decimalMark));
    if (!kinds.includes("number")) continue;
    rows.push({ fields, kinds });
    const filled = kinds.filter((kind) => kind !== "text").length;
    byCount.set(fields.length, (byCount.get(fields.length) ?? 0) + filled / fields.length);
  }
  const [fieldCount] = [...byCount].sort((one, other) => other[1] - one[1] || other[0] - one[0])[0] ?? [0];
  if (fieldCount === 0 || (fieldCount === 1 && delimiter !== "none")) return undefined;
  const fitting = rows.filter((row) => row.fields.length === fieldCount);
  const hasTrailingDelimiter = fieldCount > 1 && fitting.every((row) => row.fields.at(-1)?.trim() === "");
  const columnCount = hasTrailingDelimiter ? fieldCount - 1 : fieldCount;
  const kinds: ColumnKind[] = [];
  for (let column = 0; column < columnCount; column++) {
    kinds.push(kindOfColumn(fitting, column));
  }
  // A fact above the names ("Rate: 500 Hz") may have as many words as the rows have cells; it speaks for no dialect.
  const rowsOfKinds = fitting.filter((row) => kinds.every((kind, column) => suits(row, column, kind)));
  const filled = rowsOfKinds.reduce(
    (sum, row) => sum + row.kinds.slice(0, columnCount).filter((kind) => kind !== "text").length,
    0,
  );
  const thousandsMark = findThousandsMark(fitting, kinds, decimalMark);
  return {
    dialect: {
      delimiter,
      decimalMark,
      thousandsMark,
      columnCount,
      hasTrailingDelimiter,
      kinds,
      lineBytes: sample.lineBytes,
    },
    score: filled / columnCount,
    rows: fitting.length,
  };
}

/** What at least half of a column's cells are, those without a value left out. */
function kindOfColumn(rows: readonly JudgedRow[], column: number): ColumnKind {
  let numbers = 0;
  let clocks = 0;
  let cells = 0;
  for (const { fields, kinds } of rows) {
    const kind = kinds[column];
    if (kind === "number") numbers++;
    else if (kind === "clock") clocks++;
    // No word for a missing value is a number or a clock.
    if (kind !== "text" || !isMissing(fields[column]!)) cells++;
  }
  if (clocks > numbers && 2 * clocks >= cells) return "clock";
  return numbers > 0 && 2 * numbers >= cells ? "number" : "text";
}

/** True where a cell is what its column holds, or nothing; words may be anything. */
function suits(row: JudgedRow, column: number, kind: ColumnKind): boolean {
  return kind === "text" || row.kinds[column] === kind || isMissing(row.fields[column]!);
}

function kindOf(cell: string, decimalMark: DecimalMark): ColumnKind {
  if (!/\d/.test(cell)) return "text";
  if (!Number.isNaN(parseNumberText(cell, decimalMark)) || thousandsMarkIn(cell, decimalMark) !== undefined) {
    return "number";
  }
  return parseClockText(cell) === undefined ? "text" : "clock";
}

function findThousandsMark(
  rows: readonly JudgedRow[],
  kinds: readonly ColumnKind[],
  decimalMark: DecimalMark,
): ThousandsMark {
  const counts = new Map<ThousandsMark, number>();
  for (const { fields } of rows) {
    for (const [column, kind] of kinds.entries()) {
      const mark = kind === "number" ? thousandsMarkIn(fields[column]!, decimalMark) : undefined;
      if (mark !== undefined) counts.set(mark, (counts.get(mark) ?? 0) + 1);
    }
  }
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  return most !== undefined && most[1] >= leastMarkedCells ? most[0] : "none";
}
