import { decodeUtf8, firstInvalidUtf8 } from "./utf8.ts";
import { utf16ToUtf8 } from "./utf16.ts";
import { decodeWindows1252 } from "./windows-1252.ts";

export type TextEncoding = "UTF-8" | "Windows-1252" | "UTF-16LE" | "UTF-16BE";

/** A file's text, still as bytes: digits and delimiters are single ASCII bytes in it, whatever the file's encoding. */
export interface TextBytes {
  readonly encoding: TextEncoding;
  /** Without byte order mark; UTF-8, or Windows-1252 where `encoding` says so. */
  readonly bytes: Uint8Array;
  /** First byte that is not UTF-8 although nothing else was stated; -1 where the encoding is beyond doubt. */
  readonly firstDoubtfulByte: number;
  /** True when a UTF-16 file ends in the middle of a character. */
  readonly endsInsideCharacter: boolean;
}

/** Finds the encoding by byte order mark, else UTF-8 where the bytes are well-formed, else Windows-1252. */
export function readText(file: Uint8Array): TextBytes {
  if (file[0] === 0xff && file[1] === 0xfe) return fromUtf16(file, true);
  if (file[0] === 0xfe && file[1] === 0xff) return fromUtf16(file, false);
  const hasMark = file[0] === 0xef && file[1] === 0xbb && file[2] === 0xbf;
  const bytes = hasMark ? file.subarray(3) : file;
  const firstDoubtfulByte = firstInvalidUtf8(bytes);
  const encoding = firstDoubtfulByte < 0 || hasMark ? "UTF-8" : "Windows-1252";
  return { encoding, bytes, firstDoubtfulByte, endsInsideCharacter: false };
}

function fromUtf16(file: Uint8Array, littleEndian: boolean): TextBytes {
  return {
    encoding: littleEndian ? "UTF-16LE" : "UTF-16BE",
    bytes: utf16ToUtf8(file.subarray(2), littleEndian),
    firstDoubtfulByte: -1,
    endsInsideCharacter: file.length % 2 === 1,
  };
}

/** The characters of `text.bytes[start, end)`. */
export function textBetween(text: TextBytes, start: number, end: number): string {
  return text.encoding === "Windows-1252"
    ? decodeWindows1252(text.bytes, start, end)
    : decodeUtf8(text.bytes, start, end);
}
