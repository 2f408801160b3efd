import fc from "fast-check";
import { expect, test } from "vitest";
import { lineEndFrom, lineNumberAt, nextLineStart, unclosedLineStart } from "../../../core/bytes/lines.ts";
import { readText, textBetween } from "../../../core/bytes/text-bytes.ts";

const textOf = (bytes: Uint8Array): string => {
  const text = readText(bytes);
  return textBetween(text, 0, text.bytes.length);
};
const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const withUnits = (text: string, littleEndian: boolean): Uint8Array => {
  const bytes = new Uint8Array(2 + 2 * text.length);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xfeff, littleEndian);
  for (let index = 0; index < text.length; index++) view.setUint16(2 + 2 * index, text.charCodeAt(index), littleEndian);
  return bytes;
};

test("well-formed UTF-8 reads as the platform's own decoder reads it", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const bytes = utf8(text);
      // Second implementation: TextDecoder of the machine that runs the test. FF FE and FE FF are marks of UTF-16.
      return textOf(bytes) === new TextDecoder("utf-8").decode(bytes) && readText(bytes).encoding === "UTF-8";
    }),
    { numRuns: 2_000 },
  );
});

test("bytes are called UTF-8 exactly when the platform's strict decoder accepts them", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 12 }), (tail) => {
      const bytes = Uint8Array.of(97, ...tail);
      let isStrict = true;
      try {
        new TextDecoder("utf-8", { fatal: true }).decode(bytes);
      } catch {
        isStrict = false;
      }
      return (readText(bytes).encoding === "UTF-8") === isStrict;
    }),
    { numRuns: 5_000 },
  );
});

test("UTF-16 with a byte order mark reads as the platform's own decoder reads it", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), fc.boolean(), (text, littleEndian) => {
      const bytes = withUnits(text, littleEndian);
      const encoding = littleEndian ? "utf-16le" : "utf-16be";
      return textOf(bytes) === new TextDecoder(encoding).decode(bytes);
    }),
    { numRuns: 2_000 },
  );
});

test("a UTF-8 byte order mark is not part of the text", () => {
  expect(textOf(Uint8Array.of(0xef, 0xbb, 0xbf, 0x74))).toBe("t");
});

test("every byte that is not UTF-8 reads as Windows-1252 and the doubt is reported", () => {
  // Second implementation: TextDecoder("windows-1252"), for all 256 bytes.
  const bytes = Uint8Array.from({ length: 256 }, (_, index) => index);
  expect(textOf(bytes)).toBe(new TextDecoder("windows-1252").decode(bytes));
  expect(readText(bytes).firstDoubtfulByte).toBe(0x80);
});

test("an odd last byte of UTF-16 is reported", () => {
  expect(readText(withUnits("ab", true).subarray(0, 5)).endsInsideCharacter).toBe(true);
  expect(readText(withUnits("ab", true)).endsInsideCharacter).toBe(false);
});

// By hand.
test.each([
  ["a\nb\n", ["a", "b"], true],
  ["a\r\nb\r\n", ["a", "b"], true],
  ["a\rb\r", ["a", "b"], true],
  ["a\r\r\nb\r\r\n", ["a", "b"], true],
  ["a\n\nb", ["a", "", "b"], false],
  ["a\r\rb", ["a", "", "b"], false],
  ["a\n\r\nb", ["a", "", "b"], false],
  ["", [], true],
])("the lines of %j are found", (text, expected, lastIsClosed) => {
  const bytes = utf8(text);
  const found: string[] = [];
  for (let start = 0; start < bytes.length; ) {
    const end = lineEndFrom(bytes, start);
    found.push(text.slice(start, end));
    expect(lineNumberAt(bytes, start)).toBe(found.length);
    start = nextLineStart(bytes, end);
  }
  expect(found).toEqual(expected);
  expect(unclosedLineStart(bytes) === bytes.length).toBe(lastIsClosed);
});
