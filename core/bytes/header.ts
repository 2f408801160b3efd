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
  if (fits(names, columnCount)) {
    return areNames(names, dialect)
      ? { names: names.slice(0, columnCount), units: units.slice(0, columnCount) }
      : { names: none, units };
  }
  const looksLikeNames = names.length > 1 && areNames(names, dialect) && !/[:=]/.test(header[index]!);
  return { names: none, units, ...(looksLikeNames ? { misfit: { line: index + 1, count: names.length } } : {}) };
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

/** Names hold a letter somewhere and are not a "key: value" line above a single column. */
function areNames(cells: readonly string[], dialect: Dialect): boolean {
  if (!cells.some((cell) => /\p{L}/u.test(cell))) return false;
  if (dialect.columnCount === 1) {
    const [name = ""] = cells;
    return name.length <= longestSingleName && !/[:=]\s*\S/.test(name);
  }
  return cells.filter((cell) => !Number.isNaN(parseNumberText(cell, dialect.decimalMark))).length * 2 <= cells.length;
}
