import { expect, test } from "vitest";
import { told } from "../../told.ts";
import { codesOf, lines, readText } from "./recording-text.ts";

/** Two plates at 1000 Hz, each with a time column; the second one is `other`, in seconds. */
function twoClocks(other: (row: number) => string, name = "time (s)") {
  const row = (index: number): string => `${(index / 1000).toFixed(3)},300.5,${other(index)},400.5`;
  return readText(`time (s),left (N),${name},right (N)\n${lines(200, row)}`);
}

test.each([
  ["the same stamps", (row: number) => (row / 1000).toFixed(3), "time (s)"],
  ["the same in milliseconds", (row: number) => String(row), "time (ms)"],
  ["another zero", (row: number) => (1768644903 + row / 1000).toFixed(3), "timestamp (s)"],
  ["stamps that differ by their rounding", (row: number) => (row / 1000 + 0.0004).toFixed(4), "time (s)"],
])("a second clock with %s is no finding", (_, other, name) => {
  const read = twoClocks(other, name);
  expect(codesOf(read)).toEqual([]);
  expect(read.recording?.rateHz).toBe(1000);
});

test("plates whose clocks lie three samples apart are pointed out with the distance", () => {
  const read = twoClocks((row) => ((row + 3) / 1000).toFixed(3));
  expect(codesOf(read)).toEqual(["columns-disagree:warning"]);
  expect(told(read.findings[0])?.message).toContain("column 3 (time (s)) and column 1 (time (s)) lie 3 ms apart");
});

test("plates whose clocks run at different rates are pointed out", () => {
  const read = twoClocks((row) => (row / 1010).toFixed(5));
  expect(codesOf(read)).toEqual(["columns-disagree:warning"]);
  // 199 steps of 1 ms against 199 of 1/1.01 ms, by hand: 199 − 197.03 = 1.97.
  expect(told(read.findings[0])?.message).toContain("move apart by 1.97 ms");
});

test("of very many columns a sentence names the first and counts the others", () => {
  const names = Array.from({ length: 40 }, (_, index) => `Plate ${index + 1} (N)`);
  const row = (index: number): string =>
    [(index / 1000).toFixed(3), ...names.map((_, plate) => `${300 + plate}.5`)].join(",");
  const read = readText(`time (s),${names.join(",")}\n${lines(50, row)}`);
  expect(codesOf(read)).toEqual(["columns-unclear:refusal"]);
  expect(told(read.findings[0])?.message).toContain("column 12 (Plate 11 (N)) and 29 more");
});
