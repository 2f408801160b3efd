import type { Dialect } from "./dialect.ts";
import { type Delimiter, hasOpenQuote, splitNames } from "./fields.ts";
import { joinNameRows } from "./name-rows.ts";
import { isNumberInAnyMarks } from "./number-marks.ts";
import { looksLikeRow, rowFields } from "./numeric-body.ts";
import { isBlankLine, isCommentLine, withoutCommentMark } from "./skipped-lines.ts";

/** What the lines above the numbers say about the columns. */
export interface Header {
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** Indices of the lines that are names or units, or were meant to be. */
  readonly used: ReadonlySet<number>;
  /** Line (from 1) of what looks like column names but does not fit the rows, with its number of names. */
  readonly misfit?: { readonly line: number; readonly count: number };
  /** Line (from 1) right above the numbers that holds digits but is neither names nor a "key: value" line. */
  readonly doubtful?: number;
}

interface NameRow {
  readonly cells: readonly string[];
  /** Index of its first line: a quoted name may run over several. */
  readonly first: number;
}

/** A cell that is a unit and nothing else, with or without brackets. */
const unitCell =
  /^[[(]?\s*(?:s|sec|ms|µs|us|min|n|kn|mn|kgf|kp|lbf|lb|kg|bw|%bw|%|v|mv|mm|cm|m|m\/s|m\/s2|m\/s²|n\.?m|n·m|nm|n\.?s|n·s|n\/kg|w|hz|deg|°|h{1,2}:mm:ss(?:[.,][\dfsm0]+)?|-|1)?\s*[\])]?$/i;

/** No setting: it tells a name from a sentence and touches no number. */
const longestSingleName = 60;

/**
 * A quoted name may run over this many further lines. No setting: it limits what a lost quotation mark can take away.
 */
const mostJoinedLines = 8;

/** Separators a line of names may use although the rows use another. */
const otherSeparators: readonly Delimiter[] = ["semicolon", "tab", "pipe", "comma"];

/**
 * Finds column names and a row of units directly above the numbers, looking upwards from the last header line.
 * @param header the lines before the first row of numbers.
 */
export function readHeader(header: readonly string[], dialect: Dialect): Header {
  const { columnCount } = dialect;
  const none = Array.from({ length: columnCount }, () => "");
  const used = new Set<number>();
  const use = (from: number, to: number): void => {
    for (let index = from; index <= to; index++) used.add(index);
  };

  let index = lastFilled(header, header.length - 1, dialect);
  if (columnCount === 1 && header.slice(index + 1).some((line) => line !== "")) {
    // A blank where a number may have stood is no empty line.
    return { names: none, units: none, used, doubtful: header.findLastIndex((line) => line !== "") + 1 };
  }
  if (index < 0) return { names: none, units: none, used };
  let units: readonly string[] = none;
  const lowest = nameRowAt(header, index, dialect);
  if (fits(lowest.cells, columnCount) && isUnitsRow(lowest.cells)) {
    units = lowest.cells.slice(0, columnCount);
    use(lowest.first, index);
    index = lastFilled(header, lowest.first - 1, dialect);
    if (index < 0) return { names: none, units, used };
  }
  const { cells: names, first } = nameRowAt(header, index, dialect);
  if (fits(names, columnCount) && areNames(names, dialect)) {
    use(first, index);
    const upper = first > 0 ? nameRowAt(header, first - 1, dialect) : undefined;
    const isUpperRow = upper !== undefined && fits(upper.cells, columnCount) && areNames(upper.cells, dialect);
    const joined = isUpperRow ? joinNameRows(upper.cells.slice(0, columnCount), names, dialect) : undefined;
    if (joined !== undefined) use(upper!.first, first - 1);
    return { names: joined ?? names.slice(0, columnCount), units, used };
  }
  const line = header[index]!;
  if (isCommentLine(line, dialect.delimiter)) {
    const isRow = looksLikeRow(rowFields(withoutCommentMark(line, dialect.delimiter), dialect), dialect);
    return { names: none, units, used, ...(isRow ? { doubtful: index + 1 } : {}) };
  }
  if (isKeyAndValue(line)) return { names: none, units, used };
  if (names.length > 1 && !fits(names, columnCount) && areNames(names, dialect)) {
    use(first, index);
    return { names: none, units, used, misfit: { line: index + 1, count: names.length } };
  }
  return { names: none, units, used, ...(/\d/.test(line) ? { doubtful: index + 1 } : {}) };
}

/** The cells of the line at `index`, with the lines above it over which a quoted name runs. */
function nameRowAt(header: readonly string[], index: number, dialect: Dialect): NameRow {
  const line = withoutCommentMark(header[index]!, dialect.delimiter);
  let joined = line;
  for (let first = index - 1; hasOpenQuote(line) && first >= Math.max(0, index - mostJoinedLines); first--) {
    joined = `${header[first]!}\n${joined}`;
    if (hasOpenQuote(joined)) continue;
    const cells = splitNames(joined, dialect.delimiter, dialect.columnCount);
    if (fits(cells, dialect.columnCount) && cells.every((cell) => !cell.includes('"'))) return { cells, first };
  }
  const cells = splitNames(line, dialect.delimiter, dialect.columnCount);
  if (fits(cells, dialect.columnCount) || dialect.columnCount === 1 || isKeyAndValue(line)) {
    return { cells, first: index };
  }
  for (const separator of otherSeparators) {
    const others = splitNames(line, separator, dialect.columnCount);
    if (others.length === dialect.columnCount && others.every((cell) => cell !== "")) {
      return { cells: others, first: index };
    }
  }
  return { cells, first: index };
}

/** A delimiter behind the last name does not make another column. */
function fits(names: readonly string[], columnCount: number): boolean {
  return names.length === columnCount || (names.length === columnCount + 1 && names.at(-1) === "");
}

function lastFilled(header: readonly string[], from: number, dialect: Dialect): number {
  let index = from;
  while (index >= 0 && isBlankLine(withoutCommentMark(header[index]!, dialect.delimiter))) index--;
  return index;
}

function isUnitsRow(cells: readonly string[]): boolean {
  return cells.every((cell) => unitCell.test(cell.trim())) && cells.some((cell) => /[a-z%°]/i.test(cell));
}

/** Names hold a letter somewhere, are no numbers, and are not a "key: value" line above a single column. */
function areNames(cells: readonly string[], dialect: Dialect): boolean {
  if (!cells.some((cell) => /\p{L}/u.test(cell))) return false;
  if (cells.some((cell) => isNumberInAnyMarks(cell) || isDamagedNumber(cell))) return false;
  const [name = ""] = cells;
  return dialect.columnCount > 1 || (name.length <= longestSingleName && !isKeyAndValue(name));
}

/** "7o0.5" is a damaged first row rather than a name; "Fz1" is a name. */
function isDamagedNumber(cell: string): boolean {
  const digits = cell.match(/\d/g)?.length ?? 0;
  return digits > 1 && digits > (cell.match(/\p{L}/gu)?.length ?? 0);
}

function isKeyAndValue(line: string): boolean {
  return /^[^\d:=]+[:=]\s*\S/.test(line);
}
