import type { Dialect } from "./dialect.ts";
import { splitNames } from "./fields.ts";
import { parseNumberText } from "./number-text.ts";
import { isBlankLine, isCommentLine, withoutCommentMark } from "./skipped-lines.ts";

/** What the lines above the numbers say about the columns. */
export interface Header {
  readonly names: readonly string[];
  readonly units: readonly string[];
  /** Line (from 1) of what looks like column names but does not fit the rows, with its number of names. */
  readonly misfit?: { readonly line: number; readonly count: number };
  /** Line (from 1) right above the numbers that holds digits but is neither names nor a "key: value" line. */
  readonly doubtful?: number;
}

/** A cell that is a unit and nothing else, with or without brackets. */
const unitCell =
  /^[[(]?\s*(?:s|sec|ms|µs|us|min|n|kn|mn|kgf|kp|lbf|lb|kg|bw|%bw|%|v|mv|mm|cm|m|m\/s|m\/s2|m\/s²|n\.?m|n·m|nm|w|hz|deg|°|-|1)?\s*[\])]?$/i;

const longestSingleName = 60;

/**
 * Finds column names and a row of units directly above the numbers, looking upwards from the last header line.
 * @param header the lines before the first row of numbers.
 */
export function readHeader(header: readonly string[], dialect: Dialect): Header {
  const { columnCount } = dialect;
  const none = Array.from({ length: columnCount }, () => "");
  const numberOf = (index: number): readonly string[] => namesIn(header[index]!, dialect);

  let index = lastFilled(header, header.length - 1);
  if (index < 0) return { names: none, units: none };
  let units: readonly string[] = none;
  const lowest = numberOf(index);
  if (fits(lowest, columnCount) && isUnitsRow(lowest)) {
    units = lowest;
    index = lastFilled(header, index - 1);
    if (index < 0) return { names: none, units };
  }
  const names = numberOf(index);
  if (fits(names, columnCount) && areNames(names, dialect)) {
    return { names: names.slice(0, columnCount), units: units.slice(0, columnCount) };
  }
  const line = header[index]!;
  if (isCommentLine(line) || isKeyAndValue(line)) return { names: none, units };
  if (names.length > 1 && !fits(names, columnCount) && areNames(names, dialect)) {
    return { names: none, units, misfit: { line: index + 1, count: names.length } };
  }
  return { names: none, units, ...(/\d/.test(line) ? { doubtful: index + 1 } : {}) };
}

function namesIn(line: string, dialect: Dialect): string[] {
  const bare = isCommentLine(line) ? withoutCommentMark(line) : line;
  return splitNames(bare, dialect.delimiter, dialect.columnCount);
}

/** A delimiter behind the last name does not make another column. */
function fits(names: readonly string[], columnCount: number): boolean {
  return names.length === columnCount || (names.length === columnCount + 1 && names.at(-1) === "");
}

function lastFilled(header: readonly string[], from: number): number {
  let index = from;
  while (index >= 0 && isBlankLine(withoutCommentMark(header[index]!))) index--;
  return index;
}

function isUnitsRow(cells: readonly string[]): boolean {
  return cells.every((cell) => unitCell.test(cell.trim())) && cells.some((cell) => /[a-z%°]/i.test(cell));
}

/** Names hold a letter somewhere, are no numbers, and are not a "key: value" line above a single column. */
function areNames(cells: readonly string[], dialect: Dialect): boolean {
  if (!cells.some((cell) => /\p{L}/u.test(cell))) return false;
  if (cells.some((cell) => !Number.isNaN(parseNumberText(cell, dialect.decimalMark)) || isDamagedNumber(cell)))
    return false;
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
