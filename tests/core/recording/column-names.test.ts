import fc from "fast-check";
import { expect, test } from "vitest";
import { told } from "../../told.ts";
import { jumpText } from "./jump-text.ts";
import { codesOf, readText } from "./recording-text.ts";

/** What time, left and right columns of these names are read as. */
function read(names: readonly string[]) {
  return readText(jumpText(names.join(";"), [350, 340], { delimiter: ";" }), { unit: "N" });
}

// By hand, with a dictionary of each language: the names of time, left force and right force.
test.each([
  ["English", "Time (s)", "Left force (N)", "Right force (N)"],
  ["German", "Zeit (s)", "Kraft links (N)", "Kraft rechts (N)"],
  ["French", "Temps (s)", "Force gauche (N)", "Force droite (N)"],
  ["Spanish", "Tiempo (s)", "Fuerza izquierda (N)", "Fuerza derecha (N)"],
  ["Italian", "Tempo (s)", "Forza sinistra (N)", "Forza destra (N)"],
  ["Portuguese", "Tempo (s)", "Força esquerda (N)", "Força direita (N)"],
  ["Dutch", "Tijd (s)", "Kracht links (N)", "Kracht rechts (N)"],
  ["Polish", "Czas (s)", "Siła lewa (N)", "Siła prawa (N)"],
  ["Swedish", "Tid (s)", "Vänster kraft (N)", "Höger kraft (N)"],
  ["Danish", "Tid (s)", "Venstre kraft (N)", "Højre kraft (N)"],
  ["Norwegian", "Tid (s)", "Venstre kraft (N)", "Høyre kraft (N)"],
  ["Finnish", "Aika (s)", "Vasen voima (N)", "Oikea voima (N)"],
  ["Czech", "Čas (s)", "Levá síla (N)", "Pravá síla (N)"],
  ["Russian", "Время (s)", "Левая сила (N)", "Правая сила (N)"],
  ["Japanese", "時間 (s)", "左足の床反力 (N)", "右足の床反力 (N)"],
  ["Chinese", "时间（s）", "左脚垂直力（N）", "右脚垂直力（N）"],
  ["Korean", "시간 (s)", "왼쪽 힘 (N)", "오른쪽 힘 (N)"],
])("%s names are read with certainty", (_, ...names) => {
  const { reading, findings } = read(names);
  expect(findings).toEqual([]);
  expect(reading?.columns.map(({ role, limb, confidence }) => [role, limb, confidence])).toEqual([
    ["time", undefined, "certain"],
    ["force", "left", "certain"],
    ["force", "right", "certain"],
  ]);
});

// Short words that mean a side only as a pair: gauche and droite, izquierda and derecha, venstre and høyre …
test.each([
  ["Fz G (N)", "Fz D (N)"],
  ["Fz_I (N)", "Fz_D (N)"],
  ["Forza sx (N)", "Forza dx (N)"],
  ["Força E (N)", "Força D (N)"],
  ["Kraft li (N)", "Kraft re (N)"],
  ["Kraft V (N)", "Kraft H (N)"],
  ["Siła L (N)", "Siła P (N)"],
  ["Sol kuvvet (N)", "Sağ kuvvet (N)"],
  ["Bal erő (N)", "Jobb erő (N)"],
  ["FL (N)", "FR (N)"],
])("%s and %s are left and right only because they stand together", (left, right) => {
  const together = read(["Time (s)", left, right]);
  expect(together.reading?.columns.slice(1).map(({ limb }) => limb)).toEqual(["left", "right"]);
  expect(together.reading?.columns.slice(1).some(({ confidence }) => confidence === "likely")).toBe(true);
  const backwards = read(["Time (s)", right, left]);
  expect(backwards.reading?.columns.slice(1).map(({ limb }) => limb)).toEqual(["right", "left"]);
});

test.each([
  ["Plate D (N)", "Plate E (N)"],
  ["Channel G (N)", "Channel D (N)"],
  ["Fz1 (N)", "Fz2 (N)"],
  ["F1z (N)", "F2z (N)"],
  ["dx (N)", "Force (N)"],
  ["Sol (N)", "Force (N)"],
])("%s and %s say no side: both readings are named and asked about", (one, other) => {
  const { findings, recording } = read(["Time (s)", one, other]);
  expect(codesOf({ findings, file: { path: "", bytes: new Uint8Array(), sha256: "" } })).toEqual([
    "columns-unclear:refusal",
  ]);
  expect(recording).toBeUndefined();
  if (one !== "dx (N)" && one !== "Sol (N)") {
    expect(told(findings[0])?.action).toMatch(/^State which column is which, or take their sum/);
    expect(findings[0]?.answers).toEqual([
      { columns: { left: 2, right: 3 } },
      { columns: { left: 3, right: 2 } },
      { columns: { total: "2+3" } },
    ]);
  }
});

// By hand: the same two columns as programs write them.
test.each([
  ["FZ_LEFT (N)", "FZ_RIGHT (N)"],
  ["leftfz (N)", "rightfz (N)"],
  ["forceleft_N", "forceright_N"],
  ["kraftlinks (N)", "kraftrechts (N)"],
  ["linkerFuss [N]", "rechterFuss [N]"],
  ["Fz (L) [N]", "Fz (R) [N]"],
  ["Fz [N] links", "Fz [N] rechts"],
  ["plate1.left.fz/N", "plate2.right.fz/N"],
  ["Force (left), N", "Force (right), N"],
  ["Ground reaction force - left foot (N)", "Ground reaction force - right foot (N)"],
])("%s and %s are left and right in newtons", (left, right) => {
  const text = jumpText(["Time (s)", left, right].join(";"), [350, 340], { delimiter: ";" });
  const { reading, findings } = readText(text);
  expect(findings).toEqual([]);
  expect(reading?.columns.slice(1).map(({ limb, unit }) => [limb, unit])).toEqual([
    ["left", "N"],
    ["right", "N"],
  ]);
});

test("a side in brackets without a unit is no unit", () => {
  const text = jumpText("Time (s),Fz (L),Fz (R)", [350, 340]);
  expect(readText(text).findings.map(({ code }) => code)).toEqual(["unit-not-stated"]);
  expect(readText(text, { unit: "N" }).recording?.plates.map(({ limb }) => limb)).toEqual(["left", "right"]);
});

test("a share in per cent beside the force of a side is another quantity", () => {
  const text = jumpText("Time (s),Left (N),Right (N),Left (%),Right (%)", [350, 340, 51, 49]);
  const { reading, findings } = readText(text);
  expect(findings).toEqual([]);
  expect(reading?.columns.map(({ role }) => role)).toEqual(["time", "force", "force", "unused", "unused"]);
});

test("several forces without a side are asked about, and the answer says how to add them", () => {
  const { findings } = readText(jumpText("Time (s),Fz1 (N),Fz2 (N),Fz3 (N),Fz4 (N)", [175, 174, 170, 171]));
  expect(told(findings[0])?.action).toContain("columns that belong together are added");
  expect(findings[0]?.answers).toEqual([
    { columns: { left: "2+3", right: "4+5" } },
    { columns: { left: "4+5", right: "2+3" } },
    { asks: "columns" },
  ]);
  const corners = readText(jumpText("Time (s),FL (N),FR (N),RL (N),RR (N)", [175, 174, 170, 171]));
  expect(codesOf(corners)).toEqual(["columns-unclear:refusal"]);
});

test("another force beside one that is called vertical is asked about, a resultant is not", () => {
  expect(codesOf(readText(jumpText("t (s),Fz (N),Plate 2 (N)", [350, 340])))).toEqual(["columns-unclear:refusal"]);
  expect(readText(jumpText("t (s),Fx (N),Fy (N),Fz (N),Resultant force (N)", [12, 25, 700, 701])).findings).toEqual([]);
});

test("the order of the columns changes nothing but their positions", () => {
  const columns = [
    ["Time (s)", (index: number) => (index / 1000).toFixed(3)],
    ["Kraft links (N)", (index: number) => `${300 + (index % 9)}.5`],
    ["Kraft rechts (N)", (index: number) => `${400 + (index % 7)}.5`],
    ["Gesamt (N)", (index: number) => `${701 + (index % 9) + (index % 7)}.0`],
    ["Fx links (N)", (index: number) => `${index % 5}.5`],
    ["Weg (mm)", (index: number) => `${index % 11}.5`],
  ] as const;
  const textOf = (order: readonly (typeof columns)[number][]): string =>
    [order.map(([name]) => name), ...Array.from({ length: 60 }, (_, row) => order.map(([, cell]) => cell(row)))]
      .map((cells) => `${cells.join(";")}\n`)
      .join("");
  const platesOf = (text: string) =>
    new Map(readText(text).recording?.plates.map(({ name, limb, force }) => [name, [limb, ...force]]));
  const plain = platesOf(textOf(columns));
  expect(plain.size).toBe(2);
  fc.assert(
    fc.property(fc.shuffledSubarray([...columns], { minLength: columns.length }), (order) => {
      expect(platesOf(textOf(order))).toEqual(plain);
    }),
    { numRuns: 60 },
  );
});

test("the horizontal axes of two three-axis plates are never force", () => {
  const names = "t (s),Left Fx (N),Left Fy (N),Left Fz (N),Right Fx (N),Right Fy (N),Right Fz (N)";
  const { reading, findings } = readText(jumpText(names, [12, 25, 350, 11, 24, 340]));
  expect(findings).toEqual([]);
  expect(reading?.columns.map(({ role, limb }) => limb ?? role)).toEqual([
    "time",
    "unused",
    "unused",
    "left",
    "unused",
    "unused",
    "right",
  ]);
});

test("a vertical column that carries nothing beside a horizontal one that carries the person is asked about", () => {
  const turned = readText(jumpText("t (s),Fx (N),Fy (N),Fz (N)", [12, 700, 25]));
  expect(codesOf(turned)).toEqual(["columns-unclear:refusal"]);
  expect(told(turned.findings[0])?.message).toContain("column 3 (Fy (N)) carries the load");
  // The person's word settles it.
  expect(readText(jumpText("t (s),Fx (N),Fy (N),Fz (N)", [12, 700, 25]), { total: "Fy" }).findings).toEqual([]);
});

test("a third column that is the sum of two is named as that in the question", () => {
  const text = jumpText("Time (s),A (N),B (N),C (N)", [350, 340, 690], { decimals: 6 }).split("\n");
  const summed = text.map((line, index) => {
    const [time, one, other] = line.split(",");
    return index === 0 || time === "" ? line : [time, one, other, (Number(one) + Number(other)).toFixed(6)].join(",");
  });
  const { findings } = readText(summed.join("\n"));
  expect(told(findings[0])?.message).toContain("Column 4 (C (N)) is the sum of the others.");
});

test("what is stated, said by a whole word, by a pair, by behaviour and by nothing differs in confidence", () => {
  const confidences = (header: string, shares: readonly number[], answers = {}) =>
    readText(jumpText(header, shares), { unit: "N", ...answers }).reading?.columns.map(({ confidence }) => confidence);
  expect(confidences("time (s),a,b", [350, 340], { left: 2, right: 3 })).toEqual(["certain", "certain", "certain"]);
  expect(confidences("time (s),value", [700])).toEqual(["certain", "likely"]);
  expect(confidences("when,value", [700])).toEqual(["likely", "likely"]);
  expect(confidences("time (s),a,b", [350, 340])).toEqual(["certain", "unclear", "unclear"]);
});
