import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { ByteSearch } from "../../../../electron/register/erasing/byte-search.ts";
import { FileSearch } from "../../../../electron/register/erasing/search-files.ts";
import { formsOf, piecesOf } from "../../../../electron/register/erasing/searched-values.ts";
import { temporaryFolder } from "../register-world.ts";

/** Numbers that are drawn the same in every run, from 0 up to below a limit. */
function drawnFrom(seed: number) {
  let state = seed;
  return (below: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

test("many patterns at once are found exactly where a search for each alone finds them", () => {
  for (let seed = 1; seed <= 60; seed += 1) {
    const draw = drawnFrom(seed);
    // Few different bytes, so that beginnings of patterns stand everywhere.
    const bytes = Buffer.from(Array.from({ length: 400 }, () => 97 + draw(3)));
    const patterns = Array.from({ length: 80 }, (_, value) => {
      const start = draw(380);
      const piece = Buffer.from(bytes.subarray(start, start + 6 + draw(14)));
      if (draw(2) === 0) piece[draw(piece.length)] = 97 + draw(4);
      return { bytes: piece, value };
    }).filter((each) => each.bytes.length >= 6);
    const found = new Set<number>();
    new ByteSearch(patterns).find(bytes, found);
    const expected = patterns.flatMap((pattern, at) => (bytes.includes(pattern.bytes) ? [at] : []));
    expect(
      [...found].toSorted((a, b) => a - b),
      `seed ${seed}`,
    ).toEqual(expected);
    expect(expected.length).toBeLessThan(patterns.length);
  }
});

test("what stands across two pieces of a large file is found, and at its very beginning and end", () => {
  const piece = 4 * 1024 * 1024;
  const pattern = Buffer.from("Sunniva Tjeldvoll");
  const search = new FileSearch([{ bytes: pattern, value: 0 }]);
  const path = join(temporaryFolder(), "large");
  for (const at of [0, piece - 9, piece, piece + 8, 2 * piece - 17]) {
    const bytes = Buffer.alloc(2 * piece, 65);
    pattern.copy(bytes, at);
    writeFileSync(path, bytes);
    expect(search.inFile(path), `at ${at}`).toEqual({ bytes: 2 * piece, found: new Set([0]) });
  }
  writeFileSync(path, Buffer.alloc(2 * piece, 65));
  expect(search.inFile(path).found.size).toBe(0);
});

test("what stands in a file's name is found too", () => {
  const path = join(temporaryFolder(), "sheet of QX-4711.txt");
  writeFileSync(path, "");
  expect(new FileSearch([{ bytes: Buffer.from("QX-4711"), value: 0 }]).inFile(path).found.size).toBe(1);
});

test("a text is looked for as UTF-8, as UTF-16 in both orders, and as JSON with signs escaped, composed or not", () => {
  const forms = formsOf('Åse "Ø"').map((form) => Buffer.from(form).toString("latin1"));
  const latin = (text: string) => Buffer.from(text).toString("latin1");
  for (const form of [
    latin('Åse "Ø"'),
    latin('Åse \\"Ø\\"'),
    '\\u00c5se \\"\\u00d8\\"',
    '\\u00C5se \\"\\u00D8\\"',
    latin('A\u030Ase "Ø"'),
    Buffer.from('Åse "Ø"', "utf16le").toString("latin1"),
    Buffer.from('Åse "Ø"', "utf16le").swap16().toString("latin1"),
  ]) {
    expect(forms).toContain(form);
  }
});

test("a recording is looked for in pieces from its first bytes to its last, so that any page of it is seen", () => {
  const bytes = Buffer.from(Array.from({ length: 40_000 }, (_, at) => (at * 7919) % 251));
  const pieces = piecesOf(bytes);
  expect(bytes.indexOf(Buffer.from(pieces[0]!))).toBe(0);
  expect(bytes.lastIndexOf(Buffer.from(pieces.at(-1)!))).toBe(bytes.length - pieces.at(-1)!.length);
  const draw = drawnFrom(3);
  for (let times = 0; times < 200; times += 1) {
    // A page of SQLite holds 4092 bytes of a long content.
    const start = draw(bytes.length - 4092);
    const page: Buffer = bytes.subarray(start, start + 4092);
    expect(
      pieces.some((piece) => page.includes(Buffer.from(piece))),
      `from ${start}`,
    ).toBe(true);
  }
});
