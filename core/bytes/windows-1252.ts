import { pieceUnits } from "./utf8.ts";

/** Bytes 0x80 to 0x9F of Windows-1252 (WHATWG encoding standard); the five unassigned ones keep their own value. */
const upperControls =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

/** Text of `bytes[start, end)` read as Windows-1252; every byte has a character. */
export function decodeWindows1252(bytes: Uint8Array, start: number, end: number): string {
  let text = "";
  for (let index = start; index < end; index += pieceUnits) {
    const piece = Array.from(bytes.subarray(index, Math.min(end, index + pieceUnits)), (byte) =>
      byte >= 0x80 && byte < 0xa0 ? upperControls.charCodeAt(byte - 0x80) : byte,
    );
    text += String.fromCharCode(...piece);
  }
  return text;
}
