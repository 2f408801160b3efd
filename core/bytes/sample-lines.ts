import { lineEndFrom, longestLineBytes, nextLineStart } from "./lines.ts";
import { isBlankLine } from "./skipped-lines.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";

/**
 * Lines looked at, spread evenly over the file so that header blocks and footers stay a minority. No setting: it
 * spares time; rows of a table are alike.
 */
const linesWanted = 64;

/**
 * Up to this size every line is found before some are chosen, so that short lines count as much as long ones. No
 * setting: it spares time.
 */
const smallFileBytes = 131_072;

/** Lines from all over the text; blank ones and endless ones are left out. */
export function sampleLines(text: TextBytes): string[] {
  const starts = text.bytes.length <= smallFileBytes ? evenByLines(text.bytes) : evenByBytes(text.bytes);
  const sample: string[] = [];
  for (const start of starts) {
    const end = lineEndFrom(text.bytes, start);
    if (end - start > longestLineBytes) continue;
    const line = textBetween(text, start, end);
    if (!isBlankLine(line)) sample.push(line);
  }
  return sample;
}

function evenByLines(bytes: Uint8Array): number[] {
  const all: number[] = [];
  for (let start = 0; start < bytes.length; start = nextLineStart(bytes, lineEndFrom(bytes, start))) all.push(start);
  const step = Math.max(1, all.length / linesWanted);
  const chosen: number[] = [];
  for (let position = 0; position < all.length; position += step) chosen.push(all[Math.floor(position)]!);
  return chosen;
}

function evenByBytes(bytes: Uint8Array): number[] {
  const chosen = new Set<number>([0]);
  for (let index = 1; index < linesWanted; index++) {
    const place = Math.floor((index * bytes.length) / linesWanted);
    const start = nextLineStart(bytes, lineEndFrom(bytes, place));
    // An endless last line is looked for once.
    if (start >= bytes.length) break;
    chosen.add(start);
  }
  return [...chosen];
}
