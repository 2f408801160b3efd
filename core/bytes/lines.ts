const lineFeed = 10;
const carriageReturn = 13;

/** Where the lines of a text stand; line ends are not part of them. Index 0 is the file's line 1. */
export interface LineIndex {
  readonly count: number;
  readonly starts: Uint32Array;
  readonly ends: Uint32Array;
  /** True when the last line is closed by a line end. */
  readonly lastIsClosed: boolean;
}

/**
 * Finds the lines. LF, CR LF and CR alone end a line; so does CR CR LF, which a text-mode rewrite of CR LF leaves
 * behind and which would otherwise put an empty line between every two rows.
 */
export function findLines(bytes: Uint8Array): LineIndex {
  let starts = new Uint32Array(Math.max(16, bytes.length >> 4));
  let ends = new Uint32Array(starts.length);
  let count = 0;
  let start = 0;
  const close = (end: number): void => {
    if (count === starts.length) {
      starts = grown(starts);
      ends = grown(ends);
    }
    starts[count] = start;
    ends[count++] = end;
  };
  let index = 0;
  while (index < bytes.length) {
    const byte = bytes[index]!;
    if (byte > carriageReturn || (byte !== lineFeed && byte !== carriageReturn)) {
      index++;
      continue;
    }
    let next = index;
    while (bytes[next] === carriageReturn) next++;
    if (bytes[next] === lineFeed) {
      close(index);
      start = next + 1;
    } else {
      for (; index < next; index++) {
        close(index);
        start = index + 1;
      }
    }
    index = start;
  }
  const lastIsClosed = start === bytes.length;
  if (!lastIsClosed) close(bytes.length);
  return { count, starts: starts.subarray(0, count), ends: ends.subarray(0, count), lastIsClosed };
}

function grown(values: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer> {
  const larger = new Uint32Array(values.length * 2);
  larger.set(values);
  return larger;
}
