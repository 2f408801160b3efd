import { expect, test } from "vitest";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { told } from "../../told.ts";
import { jumpText } from "./jump-text.ts";
import { codesOf, lines, readText } from "./recording-text.ts";

const standing = 0; // first sample of a made-up jump: one body weight
const g = defaultSettings.gravity;

/** First force of the only plate against a value; the ripple of the made-up jump is 0.05 %. */
function expectStanding(read: ReturnType<typeof readText>, newtons: number): void {
  const part = 0.0006;
  expect(Math.abs((read.recording?.plates[0]?.force[standing] ?? 0) / newtons - 1)).toBeLessThan(part);
}

test.each([
  ["force (BW)", 1, 70 * g],
  ["force (xBW)", 1, 70 * g],
  ["force (% BW)", 100, 70 * g],
  ["force (N/kg)", g, 70 * g],
])("a column %j becomes newtons with a stated mass of 70 kg, and that is said", (name, share, newtons) => {
  const text = jumpText(`time (s),${name}`, [share], { decimals: 6 });
  const asked = readText(text);
  expect(codesOf(asked)).toEqual(["mass-missing:refusal"]);
  expect(told(asked.findings[0])?.action).toBe("State the body mass.");
  expect(asked.findings[0]?.answers).toEqual([{ asks: "massKg" }]);
  const read = readText(text, { massKg: 70 });
  expect(codesOf(read)).toEqual(["unit-from-mass:note"]);
  expect(read.reading?.mass).toEqual({ massKg: 70, source: "stated" });
  expectStanding(read, newtons);
});

test("the header's mass serves when it gives its unit; another stated mass outranks it with a warning", () => {
  const text = (mass: string): string => jumpText(`Mass: ${mass}\ntime (s),force (BW)`, [1], { decimals: 6 });
  const read = readText(text("70 kg"));
  expect(codesOf(read)).toEqual(["unit-from-mass:note"]);
  expect(read.reading?.mass?.source).toBe("line 1: Mass: 70 kg");
  expectStanding(read, 70 * g);
  expect(codesOf(readText(text("70")))).toEqual(["mass-missing:refusal"]);
  expect(codesOf(readText(text("70 kg"), { massKg: 75 }))).toEqual(["unit-from-mass:note", "weight-differs:warning"]);
  expect(codesOf(readText(text("70 kg"), { massKg: 71 }))).toEqual(["unit-from-mass:note"]);
  expect(codesOf(readText(text("700 kg")))).toContain("weight-implausible:refusal");
});

test("a mass changes nothing where the forces are newtons", () => {
  const text = jumpText("time (s),force (N)", [700]);
  expect(readText(text, { massKg: 50 }).recording).toEqual(readText(text).recording);
});

// By hand: what the figures of a 70 kg athlete look like in another unit than the header says.
test.each([
  ["N", 0.7, "kN (71 kg)", "kN"],
  ["N", 70, "kgf (70 kg)", "kgf"],
  ["N", 155, "kgf (155 kg)", "lbf"],
  ["kN", 700, "N (71 kg)", "N"],
])(
  "a jump called %s that stands at %s is refused, and the units it may be in are named",
  (unit, share, reading, likely) => {
    const read = readText(jumpText(`time (s),force (${unit})`, [share], { decimals: 5 }));
    expect(codesOf(read)).toEqual(["weight-implausible:refusal"]);
    expect(told(read.findings[0])?.message).toContain(reading);
    expect(told(read.findings[0])?.action).toMatch(/^State the unit the figures are in/);
    expect(read.findings[0]?.answers).toContainEqual({ unit: likely });
  },
);

test("figures that are volts more likely than anything say so", () => {
  const read = readText(jumpText("time (s),force (N)", [2.3], { decimals: 5 }));
  expect(codesOf(read)).toEqual(["weight-implausible:refusal"]);
  expect(told(read.findings[0])?.message).toContain("volts");
});

test("a person's unit is believed against a written one in which nobody could stand, and only then", () => {
  const wrong = readText(jumpText("time (s),force (N)", [0.7], { decimals: 5 }), { unit: "kN" });
  expect(codesOf(wrong)).toEqual(["unit-contradicts:warning"]);
  expect(wrong.reading).toMatchObject({ forceUnit: "kN", forceUnitFrom: "stated" });
  expectStanding(wrong, 700);
  expect(codesOf(readText(jumpText("time (s),force (N)", [700]), { unit: "kN" }))).toEqual([
    "unit-contradicts:refusal",
  ]);
  expect(codesOf(readText(jumpText("time (s),force (N)", [0.7], { decimals: 5 }), { unit: "kgf" }))).toEqual([
    "unit-contradicts:refusal",
  ]);
});

test("a light athlete, a heavy one, one leg's plate and contacts without standing are no doubt about the unit", () => {
  expect(readText(jumpText("time (s),force (N)", [26 * g])).findings).toEqual([]);
  expect(readText(jumpText("time (s),force (N)", [180 * g])).findings).toEqual([]);
  expect(readText(jumpText("time (s),left (N)", [0.5 * 40 * g])).findings).toEqual([]);
  const contacts = lines(
    2000,
    (index) => `${(index / 1000).toFixed(3)},${index % 700 < 250 ? 2600 + (index % 3) : 0.5}`,
  );
  expect(readText(`time (s),force (N)\n${contacts}`).findings).toEqual([]);
});

test("an empty plate and a weight put on it are no jump in another unit: at most a warning", () => {
  const empty = lines(2000, (index) => `${(index / 1000).toFixed(3)},${(((index * 7919) % 13) - 6) / 4}`);
  expect(readText(`time (s),force (N)\n${empty}`).findings).toEqual([]);
  const weight = lines(2000, (index) => `${(index / 1000).toFixed(3)},${(index < 500 ? 0 : 98) + (index % 3) / 10}`);
  const read = readText(`time (s),force (N)\n${weight}`);
  expect(read.findings.some((each) => each.severity === "refusal")).toBe(false);
  expect(read.recording).toBeDefined();
});

test("kilograms are no force, and the answer names the unit they may mean", () => {
  const read = readText(jumpText("time (s),force (kg)", [70]));
  expect(codesOf(read)).toEqual(["unit-not-stated:refusal"]);
  expect(told(read.findings[0])?.action).toContain("kgf where kilograms on the plate are meant");
  expect(read.findings[0]?.answers).toContainEqual({ unit: "kgf" });
  expectStanding(readText(jumpText("time (s),force (kg)", [70]), { unit: "kgf" }), 70 * 9.80665);
});
