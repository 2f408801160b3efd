import { expect, test } from "vitest";
import type { Answer } from "../../../core/ground/answer.ts";
import type { LayoutAnswers } from "../../../core/recording/reading-statements.ts";
import { told } from "../../told.ts";
import { codesOf, lines, readText } from "./recording-text.ts";

/** What each column is read as: "time", "left", "right", "both" or "unused". */
function rolesOf(names: readonly string[], answers: LayoutAnswers = {}): string[] {
  const header = names.some((name) => name !== "") ? `${names.join(";")}\n` : "";
  const rows = lines(50, (index) =>
    names.map((_, column) => (column === 0 ? (index / 1000).toFixed(3) : `${100 * column + (index % 7)}.5`)).join(";"),
  );
  const { reading } = readText(header + rows, { unit: "N", ...answers });
  return (reading?.columns ?? []).map((column) => (column.role === "force" ? (column.limb ?? "") : column.role));
}

// By hand: what a reader of these names would say.
function isAboutColumns(answer: Answer): boolean {
  return "columns" in answer || ("asks" in answer && answer.asks === "columns");
}

test.each([
  [
    ["time", "left", "right"],
    ["time", "left", "right"],
  ],
  [
    ["Time (s)", "Left Fz (N)", "Right Fz (N)"],
    ["time", "left", "right"],
  ],
  [
    ["Zeit [s]", "Kraft links [N]", "Kraft rechts [N]"],
    ["time", "left", "right"],
  ],
  [
    ["Temps (s)", "Force gauche (N)", "Force droite (N)"],
    ["time", "left", "right"],
  ],
  [
    ["Tiempo (s)", "Fuerza izquierda (N)", "Fuerza derecha (N)"],
    ["time", "left", "right"],
  ],
  [
    ["t", "FzR", "FzL"],
    ["time", "right", "left"],
  ],
  [
    ["t_s", "plate_L_N", "plate_R_N"],
    ["time", "left", "right"],
  ],
  [
    ["Zeit", "Gesamtkraft"],
    ["time", "both"],
  ],
  [
    ["seconds", "vGRF"],
    ["time", "both"],
  ],
  [
    ["time", "value"],
    ["time", "both"],
  ],
  [
    ["time", "total", "left", "right"],
    ["time", "both", "left", "right"],
  ],
  [
    ["time", "Fx left", "Fy left", "Fz left", "Fx right", "Fy right", "Fz right"],
    ["time", "unused", "unused", "left", "unused", "unused", "right"],
  ],
  [
    ["time", "left (N)", "right (N)", "COP x (mm)", "velocity (m/s)"],
    ["time", "left", "right", "unused", "unused"],
  ],
  [
    ["", ""],
    ["time", "both"],
  ],
  [
    ["time", "linker Fuß", "rechter Fuß"],
    ["time", "left", "right"],
  ],
])("columns named %j are %j", (names, expected) => {
  expect(rolesOf(names)).toEqual(expected);
});

test.each([
  [["time", "plate 1 (N)", "plate 2 (N)"]],
  [["time", "left A (N)", "left B (N)", "right (N)"]],
  [["time", "lefu (N)", "right (N)"]],
  [["time", "lefu", "right"]],
  [["time", "left (J)", "right (N)"]],
  [["", "", ""]],
  [["time", "velocity (m/s)"]],
])("columns named %j are refused as unclear, with the option that settles it", (names) => {
  const header = names.some((name) => name !== "") ? `${names.join(";")}\n` : "";
  const rows = lines(50, (index) =>
    names.map((_, column) => `${column === 0 ? index / 1000 : 300 + (index % 7)}`).join(";"),
  );
  const read = readText(header + rows, { unit: "N" });
  expect(codesOf(read)).toEqual(["columns-unclear:refusal"]);
  expect(told(read.findings[0])?.action).toMatch(/^State which column is which/);
  for (const answer of read.findings[0]!.answers) expect(answer).toSatisfy(isAboutColumns);
  expect(read.findings[0]?.answers).not.toEqual([]);
});

test("a column can be stated by position, by its whole name or by its name without unit, in any case", () => {
  const names = ["time (s)", "Plate A (N)", "Plate B (N)"];
  const expected = ["time", "right", "left"];
  expect(rolesOf(names, { left: 3, right: 2 })).toEqual(expected);
  expect(rolesOf(names, { left: "plate b", right: "PLATE A (N)" })).toEqual(expected);
  expect(rolesOf(names, { left: "3", right: "2" })).toEqual(expected);
});

test("what is stated is all that is used", () => {
  expect(rolesOf(["time", "left", "right"], { total: 2 })).toEqual(["time", "both", "unused"]);
  expect(rolesOf(["time", "left", "right"], { right: 2 })).toEqual(["time", "right", "unused"]);
});

test.each([
  [{ left: 9, right: 3 }, "There is no column"],
  [{ left: "plate c", right: 3 }, "There is no column"],
  [{ left: 3, right: 3 }, "stated twice"],
])("the stated columns %j are refused with the reason", (answers, sentence) => {
  const rows = lines(50, (index) => `${(index / 1000).toFixed(3)};300.5;400.5`);
  const read = readText(`time;left;right\n${rows}`, { unit: "N", ...answers });
  expect(codesOf(read)).toEqual(["columns-unclear:refusal"]);
  expect(told(read.findings[0])?.message).toContain(sentence);
});

test("a name that two columns carry is not enough to state one", () => {
  const rows = lines(50, (index) => `${(index / 1000).toFixed(3)};300.5;400.5`);
  const read = readText(`time;Fz;Fz\n${rows}`, { unit: "N", left: "Fz", right: 3 });
  expect(told(read.findings[0])?.message).toContain("Several columns");
  const byPosition = readText(`time;Fz;Fz\n${rows}`, { unit: "N", left: 2, right: 3 });
  expect(byPosition.recording?.plates.map((plate) => plate.name)).toEqual(["Fz (column 2)", "Fz (column 3)"]);
});

test("a side whose column holds no numbers is not passed over in silence", () => {
  const rows = lines(50, (index) => `${(index / 1000).toFixed(3)};300.5;NaN`);
  expect(codesOf(readText(`time;left;right\n${rows}`, { unit: "N" }))).toEqual(["columns-unclear:refusal"]);
});

test("a force that stands still beside two plates is not held against their sum", () => {
  const table = (weight: (row: number) => string): string =>
    `time (s),left (N),right (N),body weight (N)\n${lines(50, (row) => `${(row / 1000).toFixed(3)},300.5,${400 + row}.5,${weight(row)}`)}`;
  expect(codesOf(readText(table(() => "650.0")))).toEqual([]);
  expect(codesOf(readText(table((row) => `${650 + row}.0`)))).toEqual(["columns-disagree:warning"]);
});
