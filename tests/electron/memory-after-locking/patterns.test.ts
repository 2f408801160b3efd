import fc from "fast-check";
import { expect, test } from "vitest";
import { fewestPatternBytes, Patterns } from "./patterns.ts";

function countedOneByOne(bytes: Buffer, pattern: Uint8Array): number {
  let count = 0;
  for (let at = bytes.indexOf(pattern); at !== -1; at = bytes.indexOf(pattern, at + 1)) count += 1;
  return count;
}

test("one pass counts each pattern as often as a search for it alone, wherever it begins and also across pieces", () => {
  // Of two letters, so that patterns overlap and meet by chance.
  const letters = (minLength: number, maxLength: number) =>
    fc.array(fc.constantFrom(7, 9), { minLength, maxLength }).map((each) => Buffer.from(each));
  fc.assert(
    fc.property(
      letters(0, 300),
      fc.array(letters(fewestPatternBytes, 16), { minLength: 1, maxLength: 6 }),
      fc.array(fc.nat(400), { maxLength: 6 }),
      fc.constantFrom(64, 128, 4096),
      (noise, found, places, pieceBytes) => {
        const bytes = Buffer.alloc(480);
        noise.copy(bytes);
        for (const [index, place] of places.entries()) found[index % found.length]?.copy(bytes, place);
        const needles = new Map(found.map((pattern, index) => [`${index}`, pattern]));
        const patterns = new Patterns(needles);
        for (let at = 0; at < bytes.byteLength; at += pieceBytes)
          patterns.search(bytes.subarray(at, at + pieceBytes + patterns.longest), pieceBytes);
        for (const [name, needle] of needles)
          expect(patterns.counts.get(name), needle.toString("hex")).toBe(countedOneByOne(bytes, needle));
      },
    ),
  );
});

test("a pattern too short to be found at each step is refused", () => {
  expect(() => new Patterns(new Map([["short", new Uint8Array(fewestPatternBytes - 1)]]))).toThrow("too short");
});
