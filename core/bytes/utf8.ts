/** No setting: the code of a character. */
const replacementCharacter = 0xfffd;

/**
 * Length of the well-formed UTF-8 sequence at `index`, or 0 where the bytes are not UTF-8 (Unicode 15, table 3-7:
 * no overlong forms, no surrogates, nothing above U+10FFFF).
 */
function sequenceLength(bytes: Uint8Array, index: number): 0 | 1 | 2 | 3 | 4 {
  const first = bytes[index]!;
  if (first < 0x80) return 1;
  if (first < 0xc2 || first > 0xf4) return 0;
  const second = bytes[index + 1] ?? 0;
  if (first < 0xe0) return isContinuation(second) ? 2 : 0;
  const low = first === 0xe0 ? 0xa0 : first === 0xf0 ? 0x90 : 0x80;
  const high = first === 0xed ? 0x9f : first === 0xf4 ? 0x8f : 0xbf;
  if (second < low || second > high || !isContinuation(bytes[index + 2] ?? 0)) return 0;
  if (first < 0xf0) return 3;
  return isContinuation(bytes[index + 3] ?? 0) ? 4 : 0;
}

function isContinuation(byte: number): boolean {
  return byte >= 0x80 && byte <= 0xbf;
}

/** Index of the first byte that is not well-formed UTF-8, or -1. */
export function firstInvalidUtf8(bytes: Uint8Array): number {
  let index = 0;
  while (index < bytes.length) {
    if (bytes[index]! < 0x80) {
      index = (bytes.byteOffset + index) % 4 === 0 ? skipAscii(bytes, index) : index + 1;
      continue;
    }
    const length = sequenceLength(bytes, index);
    if (length === 0) return index;
    index += length;
  }
  return -1;
}

/** No setting: bits of bytes. */
const highBits = 0x80808080 | 0;

/** Index of the four bytes behind `index` (on a word of memory) that hold the next byte beyond ASCII; at least one further. */
function skipAscii(bytes: Uint8Array, index: number): number {
  const count = (bytes.length - index) >> 2;
  const words = new Int32Array(bytes.buffer, bytes.byteOffset + index, count);
  let word = 0;
  while (word < count && (words[word]! & highBits) === 0) word++;
  return word === 0 ? index + 1 : index + 4 * word;
}

/** Adding characters one by one would take thirty bytes of memory for each. No setting: it spares memory. */
export const pieceUnits = 8192;

/** Text of `bytes[start, end)`; a byte that is not UTF-8 becomes U+FFFD. */
export function decodeUtf8(bytes: Uint8Array, start: number, end: number): string {
  let text = "";
  let points: number[] = [];
  let index = start;
  while (index < end) {
    const length = sequenceLength(bytes, index);
    const isCharacter = length !== 0 && index + length <= end;
    points.push(isCharacter ? codePoint(bytes, index, length) : replacementCharacter);
    index += isCharacter ? length : 1;
    if (points.length < pieceUnits) continue;
    text += String.fromCodePoint(...points);
    points = [];
  }
  return text + String.fromCodePoint(...points);
}

function codePoint(bytes: Uint8Array, index: number, length: 1 | 2 | 3 | 4): number {
  const first = bytes[index]!;
  if (length === 1) return first;
  let point = first & (0xff >> (length + 1));
  for (let offset = 1; offset < length; offset++) point = (point << 6) | (bytes[index + offset]! & 0x3f);
  return point;
}
