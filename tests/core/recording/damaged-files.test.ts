import fc from "fast-check";
import { expect, test } from "vitest";
import type { ReadRecording } from "../../../core/recording/recording-as-read.ts";
import { codesOf, goodText, lines, readText } from "./recording-text.ts";

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const utf16 = (text: string): Uint8Array =>
  new Uint8Array(Uint16Array.from(`\ufeff${text}`, (character) => character.charCodeAt(0)).buffer);

/** Good files of several dialects; each reads without a finding when its answers are given. */
const files = [
  { name: "comma", bytes: utf8(goodText()), answers: {} },
  { name: "semicolon, decimal comma", bytes: utf8(goodText().replaceAll(",", ";").replaceAll(".", ",")), answers: {} },
  { name: "tab, CR LF", bytes: utf8(goodText().replaceAll(",", "\t").replaceAll("\n", "\r\n")), answers: {} },
  { name: "UTF-16", bytes: utf16(goodText()), answers: {} },
  {
    name: "one column",
    bytes: utf8(lines(200, (index) => (600 + index * 0.25).toFixed(2))),
    answers: { rateHz: 1000, unit: "N" as const },
  },
  {
    name: "header block, units, footer",
    bytes: utf8(
      `Club: Grynnholm HK\nmass;69,4\n\nZeit;Kraft links;Kraft rechts\ns;N;N\n${lines(200, (index) => `${(index / 1000).toFixed(3).replace(".", ",")};${300 + index},25;${400 + index},75`)}`,
    ),
    answers: {},
  },
] as const;

/** What a reading says about the columns; their units show in the values. */
function understoodAs({ reading, recording }: ReadRecording): unknown {
  return {
    columns: reading?.columns.map(({ position, role, limb }) => [position, role, limb]),
    rateHz: recording?.rateHz,
    plates: recording?.plates.map(({ limb }) => limb),
    count: recording?.sampleCount,
  };
}

test.each(files)("the unharmed file ($name) reads without a finding", ({ bytes, answers }) => {
  const read = readText(bytes, answers);
  expect(read.findings).toEqual([]);
  expect(read.recording?.sampleCount).toBe(200);
});

test.each(files)(
  "a file ($name) cut at any of 64 places is read or refused, and a cut inside a row is a finding",
  ({ name, bytes, answers }) => {
    for (let place = 0; place < 64; place++) {
      const length = Math.floor((place * bytes.length) / 64);
      const cut = bytes.subarray(0, length);
      const read = readText(cut, answers);
      const isUtf16 = name === "UTF-16";
      const last = isUtf16 ? cut.at(-2) : cut.at(-1);
      // A cut behind a line end leaves whole rows; one behind the last digit of a row leaves a whole row as well.
      const leavesWholeRows = last === 10 || last === 13 || bytes[length] === 10 || bytes[length] === 13;
      if (!leavesWholeRows) expect(codesOf(read), `${name} cut at ${length}`).not.toEqual([]);
    }
  },
);

test.each(files)(
  "200 flipped bits of a file ($name) change one value, or are found, or change nothing",
  ({ name, bytes, answers }) => {
    const whole = readText(bytes, answers);
    const flip = fc.record({ place: fc.nat({ max: bytes.length - 1 }), bit: fc.nat({ max: 7 }) });
    for (const { place, bit } of fc.sample(flip, { numRuns: 200, seed: 11 })) {
      const damaged = bytes.slice();
      damaged[place] = damaged[place]! ^ (1 << bit);
      const read = readText(damaged, answers);
      if (read.findings.length > 0) continue;
      const label = `${name}, byte ${place}, bit ${bit}`;
      expect(understoodAs(read), label).toEqual(understoodAs(whole));
      const changed = whole.recording!.plates.map(
        (plate, index) =>
          plate.force.filter((value, row) => value !== read.recording!.plates[index]!.force[row]).length,
      );
      expect(
        changed.reduce((sum, count) => sum + count, 0),
        label,
      ).toBeLessThanOrEqual(1);
    }
  },
);

test("any bytes are read or refused with a finding, never with an exception", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
      const read = readText(bytes);
      return read.recording !== undefined || read.findings.some((each) => each.severity === "refusal");
    }),
    { numRuns: 3_000 },
  );
});

test("any text made of what tables are made of is read or refused with a finding, never with an exception", () => {
  const piece = fc.constantFrom(
    ..."0123456789.,;\t \n\r\"'#%-+eEn()[]".split(""),
    "left",
    "right (N)",
    "time (s)",
    "NaN",
    "\r\n",
    "0.001",
    "1e5",
    "é",
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 80 }), fc.boolean(), (pieces, isAnswered) => {
      const read = readText(pieces.join(""), isAnswered ? { rateHz: 1000, unit: "N", left: 1 } : {});
      return read.recording !== undefined || read.findings.some((each) => each.severity === "refusal");
    }),
    { numRuns: 10_000 },
  );
});

test("every recording that is read holds finite numbers only", () => {
  const cell = fc.oneof(
    { weight: 20, arbitrary: fc.double({ min: -3000, max: 3000, noNaN: true }).map((value) => value.toFixed(2)) },
    { weight: 1, arbitrary: fc.constantFrom("", "NaN", "x", "1e400", "-") },
  );
  const table = fc.array(fc.tuple(cell, cell), { minLength: 2, maxLength: 30 });
  fc.assert(
    fc.property(table, (rows) => {
      const body = rows.map(([left, right], index) => `${(index / 1000).toFixed(3)};${left};${right}\n`).join("");
      const { recording } = readText(`time (s);left (N);right (N)\n${body}`);
      return recording === undefined || recording.plates.every((plate) => plate.force.every(Number.isFinite));
    }),
    { numRuns: 2_000 },
  );
});
