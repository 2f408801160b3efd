import type { Delimiter } from "./fields.ts";
import { lineEndFrom, longestLineBytes, nextLineStart } from "./lines.ts";
import type { MarkEvidence, UnclearCell } from "./mark-evidence.ts";
import type { DecimalMark } from "./number-text.ts";
import { isCommentLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/** A column whose numbers have two readings, with nothing to say which is meant. */
export interface DecimalDoubt extends UnclearCell {
  /** From 0. */
  readonly column: number;
}

/** The decimal mark of every column, and the first column for which nothing shows it. */
export interface ColumnMarks {
  readonly decimals: readonly DecimalMark[];
  /** What most columns use; at a tie the later column decides, because forces stand behind the time. */
  readonly common: DecimalMark;
  readonly doubt?: DecimalDoubt;
  /** Columns (from 0) whose numbers show another mark than a person stated. */
  readonly againstStated: readonly number[];
}

/** What stands beside the cells. */
export interface MarkContext {
  readonly delimiter: Delimiter;
  /** What a person said; it settles columns that show nothing, and never turns one round that does. */
  readonly stated?: DecimalMark;
  /** How a column of doubt is read until somebody says more. */
  readonly preferred?: DecimalMark;
}

/**
 * Judges the decimal mark of each column by its own cells: programs of different makers write time and force apart.
 * `1.234` may be 1.234 or 1234. Where a column's cells leave that open, the marks proved by the other columns settle it
 * if they agree with each other, and either this column uses the same one or its bare whole numbers show thousands.
 */
export function judgeMarks(evidence: readonly MarkEvidence[], context: MarkContext): ColumnMarks {
  const { stated } = context;
  const shown = shownMarks(evidence, context);
  const common = commonMark(evidence) ?? stated ?? context.preferred ?? "point";
  const decimals: DecimalMark[] = [];
  const againstStated: number[] = [];
  let doubt: DecimalDoubt | undefined;
  for (const [column, each] of evidence.entries()) {
    const settled = each.proved ?? stated ?? (each.isUnclear ? settledByOthers(each, shown) : common);
    if (stated !== undefined && each.proved !== undefined && each.proved !== stated) againstStated.push(column);
    if (settled === undefined) doubt ??= { column, ...(each.unclear.point ?? each.unclear.comma)! };
    decimals.push(settled ?? common);
  }
  return { decimals, common, againstStated, ...(doubt === undefined ? {} : { doubt }) };
}

/** The marks that other columns prove. A comma that separates the columns cannot start decimals outside quotes. */
function shownMarks(evidence: readonly MarkEvidence[], { delimiter }: MarkContext): ReadonlySet<DecimalMark> {
  const shown = new Set(evidence.flatMap(({ proved }) => (proved === undefined ? [] : [proved])));
  const hasComma = shown.has("comma") || evidence.some(({ unclear }) => unclear.comma !== undefined);
  if (delimiter === "comma" && !hasComma) shown.add("point");
  return shown;
}

function settledByOthers(column: MarkEvidence, shown: ReadonlySet<DecimalMark>): DecimalMark | undefined {
  const mark = column.unclearMark;
  if (mark === undefined) return undefined;
  const other = mark === "point" ? "comma" : "point";
  if (shown.size === 1 && shown.has(mark)) return mark;
  return shown.has(other) && column.looksGrouped ? other : undefined;
}

function commonMark(evidence: readonly MarkEvidence[]): DecimalMark | undefined {
  const proved = evidence.flatMap((each) => each.proved ?? []);
  const points = proved.filter((mark) => mark === "point").length;
  if (2 * points === proved.length) return proved.at(-1);
  return 2 * points > proved.length ? "point" : "comma";
}

/** Of a long file this many lines are searched for a number that settles a column. No setting: it spares time. */
const linesSearched = 20_000;

/** Adds the rows from the top to what a sample showed, until every column is settled: a clock's first second often does it. */
export function searchFurther(
  text: TextBytes,
  evidence: readonly MarkEvidence[],
  context: MarkContext,
  columnsOfLine: (line: string) => readonly (string | undefined)[] | undefined,
): void {
  let start = 0;
  for (let line = 1; line <= linesSearched && start < text.bytes.length; line++) {
    const end = lineEndFrom(text.bytes, start);
    const content = end - start > longestLineBytes ? "" : textBetween(text, start, end);
    start = nextLineStart(text.bytes, end);
    if (isCommentLine(content, context.delimiter)) continue;
    const cells = columnsOfLine(content);
    if (cells === undefined) continue;
    for (const [column, cell] of cells.entries()) {
      if (cell !== undefined) evidence[column]!.add(cell, line);
    }
    if (areSettled(evidence, context)) return;
  }
}

/** True when more rows can tell nothing: some column proves a mark, and none is in doubt. */
function areSettled(evidence: readonly MarkEvidence[], context: MarkContext): boolean {
  const shown = shownMarks(evidence, context);
  return shown.size > 0 && evidence.every((each) => !each.isUnclear || settledByOthers(each, shown) !== undefined);
}
