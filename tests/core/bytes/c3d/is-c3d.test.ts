import fc from "fast-check";
import { expect, test } from "vitest";
import { isC3d } from "../../../../core/bytes/c3d/is-c3d.ts";
import { readTable } from "../../../../core/bytes/read-table.ts";
import { c3dSamples } from "./c3d-samples.ts";
import { standingFile } from "./standing-file.ts";
import { writeC3d } from "./write-c3d.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);

test("every public sample and every written file is a C3D, whatever its byte order or parameter block", () => {
  const files = [
    ...c3dSamples().map(({ bytes }) => bytes),
    ...(["Intel", "DEC", "SGI"] as const).map((byteOrder) => writeC3d(standingFile({ byteOrder }))),
    ...[3, 10, 200].map((parameterBlock) => writeC3d({ ...standingFile(), parameterBlock })),
  ];
  for (const bytes of files) expect(isC3d(bytes)).toBe(true);
});

test("a file of the usual form stays a C3D when it is cut anywhere behind its header, so that it is refused as one", () => {
  const bytes = writeC3d(standingFile());
  for (const length of [24, 100, 512, 514, 1000]) expect(isC3d(bytes.subarray(0, length))).toBe(true);
  for (const length of [0, 1, 2, 3]) expect(isC3d(bytes.subarray(0, length))).toBe(false);
});

test("no text without zero bytes is a C3D, even one that begins with its mark and holds its processor numbers", () => {
  const letters = "APPPTUV".repeat(20_000);
  expect(isC3d(utf8(letters))).toBe(false);
  fc.assert(
    fc.property(fc.string({ maxLength: 60 }), fc.constantFrom("\u0002P", "2P", "TP", '"P', "\tP"), (text, start) => {
      const whole = `${start}${text.replaceAll("\0", "")}${letters}`;
      return !isC3d(utf8(whole));
    }),
    { numRuns: 200 },
  );
});

test("no UTF-16 text is a C3D", () => {
  fc.assert(
    fc.property(fc.string({ unit: "grapheme", minLength: 20, maxLength: 4000 }), (text) => {
      const units = Uint16Array.from(text, (letter) => letter.charCodeAt(0));
      return !isC3d(new Uint8Array(units.buffer));
    }),
    { numRuns: 300 },
  );
});

test("pictures and printed pages that share the mark are no C3D", () => {
  const picture = new Uint8Array(80_000).fill(84);
  picture.set([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13]);
  const page = new Uint8Array(80_000).fill(86);
  page.set([...utf8("%PDF-1.7\n"), 0, 0, 0, 1]);
  expect(isC3d(picture)).toBe(false);
  expect(isC3d(page)).toBe(false);
});

test("no C3D is taken for a table of text", () => {
  const files = [...c3dSamples().map(({ bytes }) => bytes), writeC3d(standingFile())];
  for (const bytes of files) expect(readTable(bytes).table).toBeUndefined();
});
