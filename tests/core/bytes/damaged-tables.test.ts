import fc from "fast-check";
import { expect, test } from "vitest";
import { readTable } from "../../../core/bytes/read-table.ts";
import { anyInput, differInOneCellAtMost, isFound, leavesWhole } from "./damage.ts";
import { goodTables } from "./good-tables.ts";

/** Per file; tests/bench/fuzz-reading.ts tries every place. */
const cutsTried = 40;
const flipsTried = 150;

test.each(goodTables)("the unharmed table ($name) reads without a refusal or a warning", ({ bytes }) => {
  const { table, findings } = readTable(bytes);
  expect(findings.filter((each) => each.severity !== "note")).toEqual([]);
  expect(table?.rows).toBe(120); // by construction
});

test.each(goodTables)("a table ($name) cut inside a row, or shorter than it states, is a finding", (good) => {
  for (let cut = 0; cut < cutsTried; cut++) {
    const length = Math.floor((cut * good.bytes.length) / cutsTried);
    const isWhole = leavesWhole(good, length);
    const { findings } = readTable(good.bytes.subarray(0, length));
    if (!isWhole) expect(findings, `cut at ${length}`).not.toEqual([]);
  }
});

test.each(goodTables)("a flipped bit of a table ($name) is a finding, or changes one cell at most", ({ bytes }) => {
  const whole = readTable(bytes);
  const flip = fc.record({ place: fc.nat({ max: bytes.length - 1 }), bit: fc.nat({ max: 7 }) });
  for (const { place, bit } of fc.sample(flip, { numRuns: flipsTried, seed: 23 })) {
    const damaged = bytes.slice();
    damaged[place] = damaged[place]! ^ (1 << bit);
    const read = readTable(damaged);
    if (isFound(whole, read)) continue;
    expect(differInOneCellAtMost(whole.table!, read.table!), `byte ${place}, bit ${bit}`).toBe(true);
  }
});

test("any bytes are a table or a refusal, never an exception", () => {
  fc.assert(
    fc.property(anyInput, (bytes) => {
      const { table, findings } = readTable(bytes);
      return table !== undefined || findings.some((each) => each.severity === "refusal");
    }),
    { numRuns: 3_000 },
  );
});

test("the same bytes give the same table, wherever they lie in memory", () => {
  fc.assert(
    fc.property(anyInput, fc.integer({ min: 1, max: 7 }), (bytes, offset) => {
      const memory = new Uint8Array(bytes.length + offset);
      memory.set(bytes, offset);
      expect(readTable(memory.subarray(offset))).toEqual(readTable(bytes));
    }),
    { numRuns: 500 },
  );
});

test("every number of a table equals Number() of its text", () => {
  const number = fc
    .tuple(fc.constantFrom("", "-", "+"), fc.stringMatching(/^(\d{1,20}\.?|\d{0,18}\.\d{1,20})(e[+-]?\d{1,2})?$/))
    .map((parts) => parts.join(""));
  fc.assert(
    fc.property(fc.array(fc.tuple(number, number), { minLength: 12, maxLength: 40 }), (cells) => {
      const text = `a,b\n${cells.map((row) => `${row.join(",")}\n`).join("")}`;
      const { table, findings } = readTable(new TextEncoder().encode(text));
      expect(findings).toEqual([]);
      cells.forEach((row, index) => {
        row.forEach((cell, column) => {
          expect(table!.columns[column]![index]).toBe(Number(cell));
        });
      });
    }),
    { numRuns: 400 },
  );
});
