import { type Delimiter, splitFields } from "./fields.ts";
import type { LineIndex } from "./lines.ts";
import { type DecimalMark, isMissing, parseNumberText } from "./number-text.ts";
import { isBlankLine, isCommentLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** How the rows of a delimited text are written. */
export interface Dialect {
  readonly delimiter: Delimiter;
  readonly decimalMark: DecimalMark;
  readonly columnCount: number;
  /** True when every row ends in a delimiter with nothing behind it. */
  readonly hasTrailingDelimiter: boolean;
  /** Which columns hold numbers (at least as many as words); the others are text and are skipped. */
  readonly isNumeric: readonly boolean[];
}

interface Candidate {
  readonly dialect: Dialect;
  /** Lines that fit, each weighed by the part of its cells that are numbers. */
  readonly score: number;
  readonly rows: number;
}

/** At equal fit the earlier wins: a mark that is there for separating beats one that may be part of a number. */
const candidates: readonly (readonly [Delimiter, DecimalMark])[] = [
  ["semicolon", "point"],
  ["semicolon", "comma"],
  ["tab", "point"],
  ["tab", "comma"],
  ["comma", "point"],
  ["comma", "comma"],
  ["spaces", "point"],
  ["spaces", "comma"],
  ["none", "point"],
  ["none", "comma"],
];

/** Lines looked at, spread evenly over the file so that header blocks and footers stay a minority. */
const sampleLines = 64;

/** Lines that must agree, as a part of the sample: below it the text is prose with numbers in it. */
const leastRowShare = 0.2;

/** Finds the dialect under which most lines are rows of numbers; undefined when there are none. */
export function detectDialect(text: TextBytes, lines: LineIndex): Dialect | undefined {
  const sample = sampleOf(text, lines);
  let best: Candidate | undefined;
  for (const [delimiter, decimalMark] of candidates) {
    const candidate = judge(sample, delimiter, decimalMark);
    if (candidate !== undefined && (best === undefined || candidate.score > best.score + 1e-9)) best = candidate;
  }
  if (best === undefined || best.rows < 2 || best.rows < leastRowShare * sample.length) return undefined;
  const { dialect } = best;
  if (dialect.columnCount === 2 && dialect.delimiter === "comma" && areDecimals(sample, text, lines)) {
    return { ...dialect, delimiter: "none", decimalMark: "comma", columnCount: 1, isNumeric: [true] };
  }
  const numericCount = dialect.isNumeric.filter(Boolean).length;
  const isProse = dialect.delimiter === "spaces" && 2 * numericCount <= dialect.columnCount;
  return isProse || 2 * numericCount < dialect.columnCount ? undefined : dialect;
}

function sampleOf(text: TextBytes, lines: LineIndex): string[] {
  const sample: string[] = [];
  const step = Math.max(1, lines.count / sampleLines);
  for (let position = 0; position < lines.count; position += step) {
    const index = Math.floor(position);
    const line = textBetween(text, lines.starts[index]!, lines.ends[index]!);
    if (!isBlankLine(line) && !isCommentLine(line)) sample.push(line);
  }
  return sample;
}

function judge(sample: readonly string[], delimiter: Delimiter, decimalMark: DecimalMark): Candidate | undefined {
  const rows: { readonly fields: readonly string[]; readonly numbers: readonly boolean[] }[] = [];
  const byCount = new Map<number, number>();
  for (const line of sample) {
    const fields = splitFields(line, delimiter);
    const numbers = fields.map((field) => !Number.isNaN(parseNumberText(field, decimalMark)));
    const numberCount = numbers.filter(Boolean).length;
    if (numberCount === 0) continue;
    rows.push({ fields, numbers });
    byCount.set(fields.length, (byCount.get(fields.length) ?? 0) + numberCount / fields.length);
  }
  const [fieldCount] = [...byCount].sort((one, other) => other[1] - one[1] || other[0] - one[0])[0] ?? [0];
  if (fieldCount === 0 || (fieldCount === 1 && delimiter !== "none")) return undefined;
  const fitting = rows.filter((row) => row.fields.length === fieldCount);
  const hasTrailingDelimiter = fieldCount > 1 && fitting.every((row) => row.fields.at(-1)?.trim() === "");
  const columnCount = hasTrailingDelimiter ? fieldCount - 1 : fieldCount;
  const shares = Array.from(
    { length: columnCount },
    (_, column) => fitting.filter((row) => row.numbers[column]).length / fitting.length,
  );
  const isNumeric = shares.map((share, column) => {
    const gaps = fitting.filter((row) => isMissing(row.fields[column]!)).length;
    return share > 0 && 2 * share * fitting.length >= fitting.length - gaps;
  });
  const score = (fitting.length * shares.reduce((sum, share) => sum + share, 0)) / columnCount;
  return {
    dialect: { delimiter, decimalMark, columnCount, hasTrailingDelimiter, isNumeric },
    score,
    rows: fitting.length,
  };
}

/**
 * `633,21` line after line may be one column with a decimal comma or two columns of whole numbers. It is one column
 * when a second part starts with a zero before another digit (whole numbers are not printed so), or when the column
 * names above hold no comma.
 */
function areDecimals(sample: readonly string[], text: TextBytes, lines: LineIndex): boolean {
  const rows = sample.filter((line) => /^\s*[+-]?\d+,\d+\s*$/.test(line));
  if (2 * rows.length < sample.length) return false;
  if (rows.some((line) => /,0\d/.test(line))) return true;
  let name: string | undefined;
  for (let index = 0; index < Math.min(lines.count, 200); index++) {
    const line = textBetween(text, lines.starts[index]!, lines.ends[index]!);
    if (isBlankLine(line) || isCommentLine(line)) continue;
    if (/^\s*[+-]?\d+,\d+\s*$/.test(line)) break;
    name = line;
  }
  return name !== undefined && !name.includes(",");
}
