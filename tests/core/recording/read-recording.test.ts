import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { told } from "../../told.ts";
import { codesOf, goodText, lines, readText } from "./recording-text.ts";

// Expected values in this file are read off the texts by hand, unless another source stands beside them.

test("a two-plate file with header says everything itself and needs no answer", () => {
  const read = readText(goodText());
  expect(read.findings).toEqual([]);
  expect(read.recording).toMatchObject({ rateHz: 1000, sampleCount: 200, timeOriginSeconds: 0 });
  expect(read.recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
    ["left", "left", "unproved"],
    ["right", "right", "unproved"],
  ]);
  expect(read.recording?.plates[0]?.force[4]).toBe(301);
  expect(read.recording?.plates[1]?.force[4]).toBe(402);
  expect(read.reading).toMatchObject({
    encoding: "UTF-8",
    delimiter: "comma",
    decimalMark: "point",
    headerLines: 1,
    rows: 200,
    rateHz: 1000,
    rateFrom: "time column",
    forceUnit: "N",
    forceUnitFrom: "header",
  });
  expect(read.reading?.columns.map(({ role, limb, unit }) => [role, limb, unit])).toEqual([
    ["time", undefined, "s"],
    ["force", "left", "N"],
    ["force", "right", "N"],
  ]);
  for (const column of read.reading?.columns ?? []) expect(column.reason).not.toBe("");
});

test("stated plates count as stated by the tester", () => {
  const read = readText(goodText(), { left: 3, right: 2, platesStated: true });
  expect(read.recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
    ["left", "right", "stated"],
    ["right", "left", "stated"],
  ]);
});

test("a column of one number a line needs rate and unit, and is one plate that carries both limbs", () => {
  const text = lines(50, (index) => (600 + index * 0.01).toFixed(2));
  expect(codesOf(readText(text))).toEqual(["rate-missing:refusal", "unit-not-stated:refusal"]);
  const read = readText(text, { rateHz: 600, unit: "N" });
  expect(read.findings).toEqual([]);
  expect(read.recording).toMatchObject({ rateHz: 600, sampleCount: 50 });
  expect(read.recording?.plates).toMatchObject([{ name: "plate 1", limb: "both" }]);
});

test("what is missing is asked for by the name of its option", () => {
  const [rate, unit] = readText(lines(50, (index) => (600 + index * 0.01).toFixed(2))).findings;
  expect(told(rate)?.action).toBe("State the sampling rate.");
  expect(rate?.answers).toEqual([{ asks: "rateHz" }]);
  expect(told(unit)?.action).toBe("State the unit: N, kN, kgf or lbf.");
  expect(unit?.answers).toContainEqual({ unit: "N" });
  const unclear = readText(
    lines(50, (index) => `${500 + (index % 3)}.5,${400 + (index % 5)}.5`),
    { rateHz: 1000, unit: "N" },
  );
  expect(codesOf(unclear)).toEqual(["columns-unclear:refusal"]);
  expect(told(unclear.findings[0])?.action).toBe(
    "State which column is which, or take their sum where nobody knows the feet.",
  );
  expect(unclear.findings[0]?.answers).toEqual([
    { columns: { left: 1, right: 2 } },
    { columns: { left: 2, right: 1 } },
    { columns: { total: "1+2" } },
  ]);
});

test("the time of the first sample is kept as origin", () => {
  const read = readText(`time (ms);total (N)\n${lines(50, (index) => `${2500 + 2 * index};${700 + index}`)}`);
  expect(read.recording).toMatchObject({ rateHz: 500, timeOriginSeconds: 2.5 });
});

// 1 kgf = 9.80665 N (CGPM 1901); 1 lbf = 0.45359237 kg × 9.80665 m/s² = 4.4482216152605 N, both by definition.
test.each([
  ["N", 2],
  ["kN", 2000],
  ["kgf", 19.6133],
  ["lbf", 8.896443230521],
] as const)("two %s are %d newtons, from the header or as stated", (unit, newtons) => {
  const body = lines(50, (index) => `${(index / 1000).toFixed(3)},2.0`);
  const fromHeader = readText(`time (s),total (${unit})\n${body}`);
  expect(fromHeader.recording?.plates[0]?.force[7]).toBe(newtons);
  expect(fromHeader.reading).toMatchObject({ forceUnit: unit, forceUnitFrom: "header" });
  const asStated = readText(`time (s),total\n${body}`, { unit });
  expect(asStated.recording?.plates[0]?.force[7]).toBe(newtons);
  expect(asStated.reading).toMatchObject({ forceUnit: unit, forceUnitFrom: "stated" });
});

test.each([
  ["left (V)", {}, "unit-not-stated:refusal"],
  ["left (V)", { unit: "N" }, "unit-not-stated:refusal"],
  ["left (kg)", {}, "unit-not-stated:refusal"],
  ["left", {}, "unit-not-stated:refusal"],
  ["left (N)", { unit: "kN" }, "unit-contradicts:refusal"],
] as const)("a force column called %j with the answers %j is refused for its unit", (name, answers, code) => {
  const read = readText(`time (s),${name}\n${lines(50, (index) => `${(index / 1000).toFixed(3)},2.5`)}`, answers);
  expect(codesOf(read)).toEqual([code]);
  expect(read.recording).toBeUndefined();
});

test("downward-positive force is turned and that is said", () => {
  const read = readText(
    `time (s),left (N),right (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},-350.5,-360.5`)}`,
  );
  expect(codesOf(read)).toEqual(["sign-turned:note"]);
  expect(read.recording?.plates.map((plate) => plate.force[0])).toEqual([350.5, 360.5]);
});

test("an empty plate beside a loaded one is not turned by its noise", () => {
  const read = readText(
    `time (s),left (N),right (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},700.5,${index % 3 === 0 ? "1.5" : "-2.5"}`)}`,
  );
  expect(read.findings).toEqual([]);
  expect(read.recording?.plates[1]?.force[1]).toBe(-2.5);
});

test("a total beside left and right is compared and the sum of the plates is used", () => {
  const table = (total: (index: number) => number): string =>
    `time (s),left (N),right (N),total (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},300.5,400.5,${total(index).toFixed(1)}`)}`;
  expect(readText(table(() => 701)).findings).toEqual([]);
  const read = readText(table((index) => (index === 20 ? 721 : 701)));
  expect(codesOf(read)).toEqual(["columns-disagree:warning"]);
  expect(told(read.findings[0])).toMatchObject({ where: "0.020 s" });
  expect(read.recording?.plates).toHaveLength(2);
});

test("a total beside one side gives the other side and says so", () => {
  const read = readText(
    `time (s),total (N),right (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},701.0,400.5`)}`,
  );
  expect(codesOf(read)).toEqual(["plate-derived:note"]);
  expect(read.recording?.plates.map(({ limb, force }) => [limb, force[9]])).toEqual([
    ["left", 300.5],
    ["right", 400.5],
  ]);
});

test("one named side alone is the plate of that limb", () => {
  const read = readText(`time (s),left (N)\n${lines(50, (index) => `${(index / 1000).toFixed(3)},700.5`)}`);
  expect(read.recording?.plates).toMatchObject([{ limb: "left" }]);
});

test("unreadable rows at the ends are left out with a warning, and time starts with the first one kept", () => {
  const rows = lines(50, (index) => `${(index / 1000).toFixed(3)},${index < 2 || index > 46 ? "NaN" : "350.5"},360.5`);
  const read = readText(`time (s),left (N),right (N)\n${rows}`);
  expect(codesOf(read)).toEqual(["cells-unreadable:warning"]);
  expect(read.recording).toMatchObject({ sampleCount: 45, timeOriginSeconds: 0.002 });
});

test.each(["", "NaN", "n/a", "35o.5"])(
  "a force cell holding %j inside the recording is refused with its line",
  (cell) => {
    const rows = lines(50, (index) => `${(index / 1000).toFixed(3)},${index === 20 ? cell : "350.5"},360.5`);
    const read = readText(`time (s),left (N),right (N)\n${rows}`);
    expect(codesOf(read)).toEqual(["cells-unreadable:refusal"]);
    expect(told(read.findings[0])?.where).toBe("line 22");
    expect(read.recording).toBeUndefined();
  },
);

test("an unreadable cell in a column that is not used does not matter", () => {
  const rows = lines(50, (index) => `${(index / 1000).toFixed(3)},350.5,360.5,${index === 20 ? "" : "1.5"}`);
  const read = readText(`time (s),left (N),right (N),COP x (mm)\n${rows}`);
  expect(read.findings).toEqual([]);
  expect(read.reading?.columns[3]?.role).toBe("unused");
});

test("100 Hz leaves weight and mass only, 400 Hz costs accuracy, 500 Hz is silent", () => {
  const at = (rateHz: number) => readText("700.5\n".repeat(50), { rateHz, unit: "N" });
  expect(codesOf(at(100))).toEqual(["rate-low:warning"]);
  expect(told(at(100).findings[0])?.message).toContain("only body weight and mass");
  expect(codesOf(at(400))).toEqual(["rate-low:warning"]);
  expect(told(at(400).findings[0])?.message).toContain("lose accuracy");
  expect(at(500).findings).toEqual([]);
});

test("a row with another number of columns inside is refused, a short last line is left out", () => {
  const text = goodText(50);
  const inside = text.replace("0.020,305.00,410.00", "0.020,305.00");
  expect(codesOf(readText(inside))).toEqual(["columns-unclear:refusal"]);
  expect(told(readText(inside).findings[0])?.where).toBe("line 22");
  const short = readText(text.slice(0, -10));
  expect(codesOf(short)).toEqual(["truncated:warning"]);
  expect(short.recording?.sampleCount).toBe(49);
});

test.each([
  ["", "empty:refusal"],
  ["The athlete was ill today.\nNo jumps.\n", "not-data:refusal"],
])("%j is refused without a reading", (text, code) => {
  const read = readText(text);
  expect(codesOf(read)).toEqual([code]);
  expect(read.reading).toBeUndefined();
  expect(read.recording).toBeUndefined();
});

test("the real jump at 600 Hz reads as 1200 samples, and is refused without its rate", () => {
  const file = new URL("../../../../shared/real-traces/standing-jump-600hz.txt", import.meta.url);
  if (!existsSync(file)) {
    console.info("not run: the real recording is not part of the project and does not lie beside it");
    return;
  }
  const bytes = new Uint8Array(readFileSync(file));
  const read = readText(bytes, { rateHz: 600, unit: "N" });
  expect(read.findings).toEqual([]);
  expect(read.recording).toMatchObject({ rateHz: 600, sampleCount: 1200 });
  // First two lines of the file.
  expect([...(read.recording?.plates[0]?.force.subarray(0, 2) ?? [])]).toEqual([633.21, 628.46]);
  expect(codesOf(readText(bytes, { unit: "N" }))).toEqual(["rate-missing:refusal"]);
});
