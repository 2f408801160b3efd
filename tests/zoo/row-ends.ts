import type { TextEncoding } from "../../core/bytes/text-bytes.ts";

/** Where the rows of a text lie in its bytes. */
export interface RowPlaces {
  readonly start: number;
  /** Behind the last character of the last row. */
  readonly end: number;
  /** Lengths that leave whole rows: behind the last character of a row, and behind each part of its line end. */
  readonly wholeLengths: ReadonlySet<number>;
}

/** Finds the rows between two lines (from 1) of a text. */
export function rowPlaces(bytes: Uint8Array, encoding: TextEncoding, firstLine: number, lastLine: number): RowPlaces {
  const width = encoding.startsWith("UTF-16") ? 2 : 1;
  const low = encoding === "UTF-16BE" ? 1 : 0;
  const unitAt = (at: number): number => bytes[at + low]! + (width === 2 ? 256 * bytes[at + 1 - low]! : 0);
  const wholeLengths = new Set<number>();
  let start = 0;
  let end = bytes.length;
  let line = 1;
  for (let at = 0; at < bytes.length; line++) {
    const lineStart = at;
    while (at < bytes.length && unitAt(at) !== 10 && unitAt(at) !== 13) at += width;
    const contentEnd = Math.min(at, bytes.length);
    if (line === firstLine) start = lineStart;
    if (line === lastLine) end = contentEnd;
    const isPair = at + width < bytes.length && unitAt(at) === 13 && unitAt(at + width) === 10;
    at += isPair ? 2 * width : width;
    if (line < firstLine || line > lastLine) continue;
    // A remark between the rows is no record.
    const first = unitAt(lineStart) === 0x23 ? lineStart : contentEnd;
    for (let length = first; length <= Math.min(at, bytes.length); length += width) wholeLengths.add(length);
  }
  return { start, end, wholeLengths };
}
