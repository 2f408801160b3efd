import { decodeUtf8, firstInvalidUtf8 } from "./utf8.ts";
import { utf16ToUtf8 } from "./utf16.ts";
import { decodeWindows1252 } from "./windows-1252.ts";

export type TextEncoding = "UTF-8" | "Windows-1252" | "UTF-16LE" | "UTF-16BE";

/** A file's text, still as bytes: digits and delimiters are single ASCII bytes in it, whatever the file's encoding. */
export interface TextBytes {
  readonly encoding: TextEncoding;
  /** Without byte order mark; UTF-8, or Windows-1252 where `encoding` says so. */
  readonly bytes: Uint8Array;
  /** `pattern`: UTF-16 without a byte order mark, known by the zero in every second byte. */
  readonly encodingFrom: "mark" | "bytes" | "pattern";
  /** First byte that is not UTF-8 although nothing else was stated; -1 where the encoding is beyond doubt. */
  readonly firstDoubtfulByte: number;
  /** True when a UTF-16 file ends in the middle of a character. */
  readonly endsInsideCharacter: boolean;
}

/**
 * UTF-16 shows its zeros at the beginning; of digits and delimiters every unit has one. No setting: it tells encodings
 * apart, which leave nothing in between.
 */
const unitsLookedAt = 512;
const leastZeroShare = 0.7;

/** Finds the encoding by byte order mark, else UTF-8 where the bytes are well-formed, else Windows-1252. */
export function readText(file: Uint8Array): TextBytes {
  if (file[0] === 0xff && file[1] === 0xfe) return fromUtf16(file.subarray(2), true, "mark");
  if (file[0] === 0xfe && file[1] === 0xff) return fromUtf16(file.subarray(2), false, "mark");
  const pattern = utf16Pattern(file);
  if (pattern !== undefined) return fromUtf16(file, pattern === "little", "pattern");
  const hasMark = file[0] === 0xef && file[1] === 0xbb && file[2] === 0xbf;
  const bytes = hasMark ? file.subarray(3) : file;
  const firstDoubtfulByte = firstInvalidUtf8(bytes);
  const encoding = firstDoubtfulByte < 0 || hasMark ? "UTF-8" : "Windows-1252";
  return { encoding, bytes, encodingFrom: hasMark ? "mark" : "bytes", firstDoubtfulByte, endsInsideCharacter: false };
}

/** The byte order of UTF-16 text without a mark: zeros in every second byte and hardly any in the others. */
function utf16Pattern(file: Uint8Array): "little" | "big" | undefined {
  const units = Math.min(file.length >> 1, unitsLookedAt);
  let first = 0;
  let second = 0;
  for (let index = 0; index < units; index++) {
    if (file[2 * index] === 0) first++;
    if (file[2 * index + 1] === 0) second++;
  }
  if (units < 4) return undefined;
  if (second >= leastZeroShare * units && first === 0) return "little";
  return first >= leastZeroShare * units && second === 0 ? "big" : undefined;
}

function fromUtf16(units: Uint8Array, littleEndian: boolean, encodingFrom: "mark" | "pattern"): TextBytes {
  return {
    encoding: littleEndian ? "UTF-16LE" : "UTF-16BE",
    bytes: utf16ToUtf8(units, littleEndian),
    encodingFrom,
    firstDoubtfulByte: -1,
    endsInsideCharacter: units.length % 2 === 1,
  };
}

/** The characters of `text.bytes[start, end)`. */
export function textBetween(text: TextBytes, start: number, end: number): string {
  return text.encoding === "Windows-1252"
    ? decodeWindows1252(text.bytes, start, end)
    : decodeUtf8(text.bytes, start, end);
}
