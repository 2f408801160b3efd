import type { Dialect } from "./dialect.ts";
import { type NumberReader, readNumber } from "./number-bytes.ts";

const space = 32;
const tab = 9;
const quote = 34;
const delimiterBytes = { comma: 44, semicolon: 59, tab, spaces: -1, none: -1 } as const;

/**
 * A function that reads bytes `[start, end)` into row `row` and says whether they were a complete row of numbers.
 * When they were not, the row holds leftovers and is written again or never counted.
 */
export function plainRowReader(
  bytes: Uint8Array,
  dialect: Dialect,
  columns: readonly (Float64Array | undefined)[],
): (start: number, end: number, row: number) => boolean {
  const { columnCount, delimiter, hasTrailingDelimiter } = dialect;
  const delimiterByte = delimiterBytes[delimiter];
  const decimalByte = dialect.decimalMark === "comma" ? 44 : 46;
  const isBlank = (byte: number): boolean => byte === space || (byte === tab && delimiterByte !== tab);
  const reader: NumberReader = { value: 0, end: 0 };

  return (start, end, row) => {
    let index = start;
    for (let position = 0; position < columnCount; position++) {
      while (index < end && isBlank(bytes[index]!)) index++;
      if (index >= end) return false;
      const column = columns[position];
      if (column === undefined) {
        if (bytes[index] === quote) {
          do index++;
          while (index < end && bytes[index] !== quote);
          index++;
          if (bytes[index] === quote) return false;
        }
        while (index < end && bytes[index] !== delimiterByte && !(delimiterByte < 0 && isBlank(bytes[index]!))) {
          if (bytes[index] === quote) return false;
          index++;
        }
      } else {
        const isQuoted = bytes[index] === quote;
        if (isQuoted) index++;
        readNumber(bytes, index, end, decimalByte, reader);
        index = reader.end;
        if (index < 0) return false;
        if (isQuoted && bytes[index++] !== quote) return false;
        column[row] = reader.value;
      }
      if (position < columnCount - 1) {
        if (delimiterByte < 0) {
          if (index >= end || !isBlank(bytes[index]!)) return false;
        } else {
          while (index < end && isBlank(bytes[index]!)) index++;
          if (index >= end || bytes[index] !== delimiterByte) return false;
          index++;
        }
      }
    }
    while (index < end && isBlank(bytes[index]!)) index++;
    if (hasTrailingDelimiter && index < end && bytes[index] === delimiterByte) index++;
    while (index < end && isBlank(bytes[index]!)) index++;
    return index >= end;
  };
}
