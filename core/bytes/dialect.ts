import { parseClockText } from "./clock-text.ts";
import { type ColumnMarks, type DecimalDoubt, judgeMarks, type MarkContext, searchFurther } from "./column-marks.ts";
import { type Delimiter, splitFields } from "./fields.ts";
import { isWholeLineNumber } from "./joined-numbers.ts";
import { MarkEvidence } from "./mark-evidence.ts";
import { isNumberInAnyMarks, isNumberWith, type NumberMarks } from "./number-marks.ts";
import { type DecimalMark, isMissing, type ThousandsMark, thousandsMarkIn } from "./number-text.ts";
import { sampleLines } from "./sample-lines.ts";
import { isCommentLine } from "./skipped-lines.ts";
import type { TextBytes } from "./text-bytes.ts";

/** What the cells of a column are; a clock is wall-clock time such as 10:15:03.125. */
export type ColumnKind = "number" | "clock" | "text";

/** How the rows of a delimited text are written. */
export interface Dialect {
  readonly delimiter: Delimiter;
  /** By column: time and forces may have been written apart. */
  readonly marks: readonly NumberMarks[];
  /** The marks of most columns, for numbers that stand in none. */
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

/** A dialect, and what about its decimal marks a person should know. */
export interface DetectedDialect {
  readonly dialect: Dialect;
  readonly doubt?: DecimalDoubt;
  /** Columns (from 0) whose numbers show another decimal mark than was stated. */
  readonly againstStated: readonly number[];
}

interface Candidate {
  readonly delimiter: Delimiter;
  readonly fieldCount: number;
  readonly columnCount: number;
  readonly fitting: readonly JudgedRow[];
  readonly evidence: readonly MarkEvidence[];
  readonly lineBytes: number;
  /** Lines that fit, each weighed by the part of its cells that are numbers or clocks. */
  readonly score: number;
}

/** At equal fit the earlier wins: a mark that is there for separating beats one that may be part of a number. */
const delimiters: readonly Delimiter[] = ["semicolon", "tab", "pipe", "comma", "spaces", "none"];

/**
 * Lines that must agree, as a part of the sample: below it the text is prose with numbers in it. No setting: it tells
 * a table from prose, which is refused and never read otherwise.
 */
const leastRowShare = 0.2;

/**
 * A thousands mark is believed when this many cells of the sample have it: one alone may be a damaged digit. No
 * setting: it is the least that is more than one.
 */
const leastMarkedCells = 2;

/**
 * Finds the dialect under which most lines are rows of numbers; undefined when there are none.
 * @param stated the decimal mark, where a person has said it.
 */
export function detectDialect(text: TextBytes, stated?: DecimalMark): DetectedDialect | undefined {
  const sample = sampleLines(text);
  const statedMark = stated === undefined ? {} : { stated };
  let best: Candidate | undefined;
  for (const delimiter of delimiters) {
    const candidate = judge(splitSample(sample, delimiter), { delimiter, ...statedMark });
    if (candidate !== undefined && (best === undefined || candidate.score > best.score + 1e-9)) best = candidate;
  }
  if (best === undefined || best.fitting.length < 2 || best.fitting.length < leastRowShare * sample.length) {
    return undefined;
  }
  if (best.delimiter === "comma" && isWholeLineNumber(sample, text)) {
    const context: MarkContext = {
      delimiter: "none",
      preferred: best.columnCount === 2 ? "comma" : "point",
      ...statedMark,
    };
    const joined = judge(splitSample(sample, "none"), context);
    if (joined !== undefined) return settle(text, joined, context);
  }
  const found = settle(text, best, { delimiter: best.delimiter, ...statedMark });
  const { delimiter, columnCount, kinds } = found.dialect;
  const texts = kinds.filter((kind) => kind === "text").length;
  const numbers = kinds.filter((kind) => kind === "number").length;
  const isProse = delimiter === "spaces" && 2 * texts >= columnCount;
  return numbers === 0 || isProse || 2 * texts > columnCount ? undefined : found;
}

/** Looks further where the sample left a mark open, and says how every column is written. */
function settle(text: TextBytes, candidate: Candidate, context: MarkContext): DetectedDialect {
  const { delimiter, columnCount, fieldCount, fitting, evidence, lineBytes } = candidate;
  const before = kindsOf(candidate, judgeMarks(evidence, context).decimals);
  const hasNumber = before.map((kind) => kind === "number");
  searchFurther(text, evidence, context, (line) => {
    const fields = splitFields(line, delimiter);
    if (fields.length !== fieldCount && fields.length !== columnCount) return undefined;
    const cells = fields.slice(0, columnCount).map((field, column) => (hasNumber[column] ? field : undefined));
    return cells.every((cell) => cell === undefined || isMissing(cell) || isNumberInAnyMarks(cell)) ? cells : undefined;
  });
  const marks: ColumnMarks = judgeMarks(evidence, context);
  const kinds = kindsOf(candidate, marks.decimals);
  const thousands = {
    point: findThousandsMark(fitting, kinds, marks.decimals, "point"),
    comma: findThousandsMark(fitting, kinds, marks.decimals, "comma"),
  };
  const dialect: Dialect = {
    delimiter,
    marks: marks.decimals.map((decimal) => ({ decimal, thousands: thousands[decimal] })),
    decimalMark: marks.common,
    thousandsMark: thousands[marks.common],
    columnCount,
    hasTrailingDelimiter: fieldCount > columnCount,
    kinds,
    lineBytes,
  };
  const { doubt, againstStated } = marks;
  return { dialect, againstStated, ...(doubt === undefined ? {} : { doubt }) };
}

interface JudgedRow {
  readonly fields: readonly string[];
  /** A number here is one under either decimal mark. */
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

function judge(sample: SplitSample, context: MarkContext): Candidate | undefined {
  const { delimiter } = context;
  const rows: JudgedRow[] = [];
  const byCount = new Map<number, number>();
  for (const fields of sample.lines) {
    const kinds = fields.map(kindOf);
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
  const evidence = Array.from({ length: columnCount }, () => new MarkEvidence());
  for (const { fields } of fitting) {
    for (const [column, each] of evidence.entries()) each.add(fields[column]!, 0);
  }
  const { decimals } = judgeMarks(evidence, context);
  const kinds = kindsOf({ fitting, columnCount }, decimals);
  // A fact above the names ("Rate: 500 Hz") may have as many words as the rows have cells; it speaks for no dialect.
  const rowsOfKinds = fitting.filter((row) => kinds.every((kind, column) => suits(row, column, kind, decimals)));
  const filled = rowsOfKinds.reduce(
    (sum, row) => sum + decimals.filter((decimal, column) => kindUnder(row, column, decimal) !== "text").length,
    0,
  );
  return {
    delimiter,
    fieldCount,
    columnCount,
    fitting,
    evidence,
    lineBytes: sample.lineBytes,
    score: filled / columnCount,
  };
}

function kindsOf(
  { fitting, columnCount }: Pick<Candidate, "fitting" | "columnCount">,
  decimals: readonly DecimalMark[],
): ColumnKind[] {
  return Array.from({ length: columnCount }, (_, column) => kindOfColumn(fitting, column, decimals[column]!));
}

/** What at least half of a column's cells are, those without a value left out. */
function kindOfColumn(rows: readonly JudgedRow[], column: number, decimal: DecimalMark): ColumnKind {
  let numbers = 0;
  let clocks = 0;
  let cells = 0;
  for (const row of rows) {
    const kind = kindUnder(row, column, decimal);
    if (kind === "number") numbers++;
    else if (kind === "clock") clocks++;
    // No word for a missing value is a number or a clock.
    if (kind !== "text" || !isMissing(row.fields[column]!)) cells++;
  }
  if (clocks > numbers && 2 * clocks >= cells) return "clock";
  return numbers > 0 && 2 * numbers >= cells ? "number" : "text";
}

/** What a cell is under the decimal mark of its column. */
function kindUnder({ fields, kinds }: JudgedRow, column: number, decimal: DecimalMark): ColumnKind {
  const kind = kinds[column]!;
  if (kind !== "number" || isNumberWith(fields[column]!, decimal)) return kind;
  return parseClockText(fields[column]!) === undefined ? "text" : "clock";
}

/** True where a cell is what its column holds, or nothing; words may be anything. */
function suits(row: JudgedRow, column: number, kind: ColumnKind, decimals: readonly DecimalMark[]): boolean {
  return kind === "text" || kindUnder(row, column, decimals[column]!) === kind || isMissing(row.fields[column]!);
}

function kindOf(cell: string): ColumnKind {
  if (!/\d/.test(cell)) return "text";
  if (isNumberInAnyMarks(cell)) return "number";
  return parseClockText(cell) === undefined ? "text" : "clock";
}

/** The thousands mark in the columns with this decimal mark. */
function findThousandsMark(
  rows: readonly JudgedRow[],
  kinds: readonly ColumnKind[],
  decimals: readonly DecimalMark[],
  decimal: DecimalMark,
): ThousandsMark {
  const counts = new Map<ThousandsMark, number>();
  for (const { fields } of rows) {
    for (const [column, kind] of kinds.entries()) {
      if (kind !== "number" || decimals[column] !== decimal) continue;
      const mark = thousandsMarkIn(fields[column]!, decimal);
      if (mark !== undefined) counts.set(mark, (counts.get(mark) ?? 0) + 1);
    }
  }
  const [most] = [...counts].sort((one, other) => other[1] - one[1]);
  return most !== undefined && most[1] >= leastMarkedCells ? most[0] : "none";
}
