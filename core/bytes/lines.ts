/** No setting: codes of characters. */
const lineFeed = 10;
const carriageReturn = 13;

/**
 * No row of a recording is longer; longer lines are looked at no further than this. No setting: a size in bytes, which
 * guards the memory.
 */
export const longestLineBytes = 65_536;

/** Index of the line end behind `start`, or the length of the text. */
export function lineEndFrom(bytes: Uint8Array, start: number): number {
  let index = start;
  while (index < bytes.length) {
    const byte = bytes[index]!;
    if (byte <= carriageReturn && (byte === lineFeed || byte === carriageReturn)) return index;
    index++;
  }
  return index;
}

/**
 * Where the next line starts, behind the line end at `end`. LF, CR LF and CR alone end a line; so does CR CR LF, which a
 * text-mode rewrite of CR LF leaves behind and which would otherwise put an empty line between every two rows.
 */
export function nextLineStart(bytes: Uint8Array, end: number): number {
  if (bytes[end] !== carriageReturn) return end + 1;
  if (bytes[end + 1] === lineFeed) return end + 2;
  return bytes[end + 1] === carriageReturn && bytes[end + 2] === lineFeed ? end + 3 : end + 1;
}

/** Index behind the last line end: what follows is a line that nothing closes. 0 where there is no line end. */
export function unclosedLineStart(bytes: Uint8Array): number {
  let index = bytes.length;
  while (index > 0 && bytes[index - 1] !== lineFeed && bytes[index - 1] !== carriageReturn) index--;
  return index;
}

/** Number (from 1) of the line in which the byte at `position` stands. */
export function lineNumberAt(bytes: Uint8Array, position: number): number {
  let line = 1;
  for (let start = nextLineStart(bytes, lineEndFrom(bytes, 0)); start <= position && start < bytes.length; line++) {
    start = nextLineStart(bytes, lineEndFrom(bytes, start));
  }
  return line;
}
