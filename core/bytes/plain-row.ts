import type { Dialect } from "./dialect.ts";
import { readNumber } from "./number-bytes.ts";

/** No setting: codes of characters. */
const space = 32;
const tab = 9;
const quote = 34;
const lineFeed = 10;
const carriageReturn = 13;
const delimiterBytes = { comma: 44, semicolon: 59, tab, pipe: 124, spaces: -1, none: -1 } as const;

/**
 * A function that reads the row of numbers starting at `start` into row `row` and gives the index of its line end, or -1
 * where the line is anything else. Then the row holds leftovers and is written again or never counted.
 *
 * The places of cells of text and clocks are left in `cellStarts` and `cellEnds` by column, without quotes.
 * A line end must follow: it is where the reader stops at the latest.
 */
export function plainRowReader(
  bytes: Uint8Array,
  dialect: Dialect,
  cells: { readonly starts: Float64Array; readonly ends: Float64Array },
): (start: number, row: number, columns: readonly (Float64Array | undefined)[]) => number {
  const { columnCount, delimiter, hasTrailingDelimiter } = dialect;
  const delimiterByte = delimiterBytes[delimiter];
  const decimalBytes = Uint8Array.from(dialect.marks, ({ decimal }) => (decimal === "comma" ? 44 : 46));
  const otherBlank = delimiterByte === tab ? space : tab;
  const isNumber = dialect.kinds.map((kind) => kind === "number");
  const isEnd = (byte: number): boolean => byte === lineFeed || byte === carriageReturn;

  /** Index behind a cell of text, or -1 where its quotes are not plain. */
  const skipText = (start: number, position: number): number => {
    let index = start;
    const isQuoted = bytes[index] === quote;
    if (isQuoted) index++;
    cells.starts[position] = index;
    let byte = bytes[index]!;
    while (!isEnd(byte) && byte !== quote) {
      if (!isQuoted && (byte === delimiterByte || (delimiterByte < 0 && (byte === space || byte === tab)))) break;
      byte = bytes[++index]!;
    }
    cells.ends[position] = index;
    if (isQuoted) return byte === quote && bytes[index + 1] !== quote ? index + 1 : -1;
    return byte === quote ? -1 : index;
  };

  return (start, row, columns) => {
    let index = start;
    for (let position = 0; position < columnCount; position++) {
      let byte = bytes[index]!;
      while (byte === space || byte === otherBlank) byte = bytes[++index]!;
      if (!isNumber[position]) {
        index = skipText(index, position);
        if (index < 0) return -1;
      } else if (byte === quote) {
        index = readNumber(bytes, index + 1, decimalBytes[position]!, columns[position]!, row);
        if (index < 0 || bytes[index] !== quote) return -1;
        index++;
      } else {
        index = readNumber(bytes, index, decimalBytes[position]!, columns[position]!, row);
        if (index < 0) return -1;
      }
      if (position === columnCount - 1) break;
      byte = bytes[index]!;
      if (delimiterByte < 0) {
        if (byte !== space && byte !== tab) return -1;
      } else {
        while (byte === space || byte === otherBlank) byte = bytes[++index]!;
        if (byte !== delimiterByte) return -1;
      }
      index++;
    }
    let byte = bytes[index]!;
    if (isEnd(byte)) return index;
    while (byte === space || byte === otherBlank) byte = bytes[++index]!;
    if (hasTrailingDelimiter && byte === delimiterByte) byte = bytes[++index]!;
    while (byte === space || byte === otherBlank) byte = bytes[++index]!;
    return isEnd(byte) ? index : -1;
  };
}
