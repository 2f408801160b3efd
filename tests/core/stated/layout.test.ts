import Ajv2020 from "ajv/dist/2020.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { z } from "zod";
import { readTable } from "../../../core/bytes/read-table.ts";
import { layoutShape } from "../../../core/recording/layout-shape.ts";
import { readRecording } from "../../../core/recording/read-recording.ts";
import type { LayoutAnswers, RememberedAnswers } from "../../../core/recording/reading-statements.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import published from "../../../core/stated/layout.schema.json" with { type: "json" };
import type { Layout, layoutSchema } from "../../../core/stated/layout.ts";
import { parseLayout, writeLayout } from "../../../core/stated/layout-file.ts";
import { publishedSchemas } from "../../../core/stated/published-schemas.ts";
import { told } from "../../told.ts";
import { jumpText } from "../recording/jump-text.ts";

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

function shapeOf(text: string) {
  const { table } = readTable(bytesOf(text));
  if (table === undefined) throw new Error("The example holds no table.");
  return layoutShape(table);
}

const header = "Athlete: GH-07\nDate: 2026-10-14\nplate A,plate B";
const withoutTime = { time: () => "" };
const text = jumpText(header, [350, 340], withoutTime);
const answers: RememberedAnswers = { rateHz: 1200, unit: "N", left: 2, right: 1, platesStated: true };
const layout: Layout = { schemaVersion: 1, name: "Hall, two plates", shape: shapeOf(text), answers };

function read(file: string, layouts: readonly Layout[], said: LayoutAnswers = {}) {
  return readRecording({ path: "a.csv", bytes: bytesOf(file), sha256: "" }, said, defaultSettings, layouts);
}

test("the shape of a file is its dialect, its columns and the keys of its header, and no value", () => {
  expect(layout.shape).toEqual({
    delimiter: "comma",
    decimalMark: "point",
    columns: [
      { name: "plate A", unit: "" },
      { name: "plate B", unit: "" },
    ],
    headerKeys: ["athlete", "date"],
  });
  const other = jumpText("Athlete: GH-12\nDate: 2026-11-02\nplate A,plate B", [512, 498], withoutTime);
  expect(shapeOf(other)).toEqual(layout.shape);
});

test("a layout answers for a file of its shape, and the reading names it", () => {
  const asked = read(text, []);
  expect(asked.findings.map(({ code }) => code)).toEqual(["columns-unclear", "rate-missing"]);
  const { reading, recording, findings } = read(text, [layout]);
  expect(findings).toEqual([]);
  expect(recording).toMatchObject({ rateHz: 1200 });
  expect(recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
    ["plate A", "right", "layout"],
    ["plate B", "left", "layout"],
  ]);
  expect(reading).toMatchObject({ layout: layout.name, rateSource: `by the layout "${layout.name}"` });
  expect(reading?.columns[0]?.reason).toBe(`by the layout "${layout.name}" as right`);
});

const nearShapes: readonly (readonly [string, string])[] = [
  ["another unit", jumpText(header.replace("plate A", "plate A (N)"), [350, 340], withoutTime)],
  ["another name", jumpText(header.replace("plate A", "plate C"), [350, 340], withoutTime)],
  ["another case", jumpText(header.replace("plate A", "Plate A"), [350, 340], withoutTime)],
  ["another order", jumpText(header.replace("plate A,plate B", "plate B,plate A"), [350, 340], withoutTime)],
  ["another column", jumpText(`${header},plate C`, [350, 340, 10], withoutTime)],
  ["a time column", jumpText(header.replace("plate A", "time (s),plate A"), [350, 340])],
  ["another header line", jumpText(`Side: left\n${header}`, [350, 340], withoutTime)],
  ["one header line less", jumpText(header.replace("Date: 2026-10-14\n", ""), [350, 340], withoutTime)],
  ["another key", jumpText(header.replace("Date", "Day"), [350, 340], withoutTime)],
  ["another delimiter", jumpText(header.replace(",", ";"), [350, 340], { ...withoutTime, delimiter: ";" })],
  [
    "another decimal mark",
    jumpText(header.replace(",", ";"), [350, 340], { ...withoutTime, delimiter: ";" }).replaceAll(".", ","),
  ],
];

test.each(nearShapes)("a file with %s is not of the shape, and the layout is not applied", (_, near) => {
  expect(shapeOf(near)).not.toEqual(layout.shape);
  const { reading, recording } = read(near, [layout]);
  expect(reading && "layout" in reading).toBe(false);
  expect(recording?.rateHz).not.toBe(1200);
  expect(recording?.plates.some(({ proof }) => proof === "layout") ?? false).toBe(false);
});

test("what a person says about one file outranks the layout: columns as a whole, other answers one by one", () => {
  const rate = read(text, [layout], { rateHz: 1000 });
  expect(rate.recording?.rateHz).toBe(1000);
  expect(rate.recording?.plates.map(({ proof }) => proof)).toEqual(["layout", "layout"]);
  const columns = read(text, [layout], { left: 1, right: 2, platesStated: true });
  expect(columns.recording?.plates.map(({ limb, proof }) => [limb, proof])).toEqual([
    ["left", "stated"],
    ["right", "stated"],
  ]);
  const single = read(text, [layout], { total: 1 });
  expect(single.recording?.plates.map(({ limb }) => limb)).toEqual(["both"]);
  const swapped = read(text, [layout], { swapPlates: true });
  expect(swapped.recording?.plates.map(({ limb, proof }) => [limb, proof])).toEqual([
    ["left", "stated"],
    ["right", "stated"],
  ]);
});

test("a layout that knows no feet proves none", () => {
  const feetless: Layout = { ...layout, answers: { rateHz: 1200, unit: "N", left: 1, right: 2 } };
  expect(read(text, [feetless]).recording?.plates.map(({ proof }) => proof)).toEqual(["unproved", "unproved"]);
});

test("a layout's rate against the time column is refused in its own name", () => {
  const timed = jumpText("time (s),left (N),right (N)", [350, 340]);
  const wrong: Layout = { schemaVersion: 1, name: "Slow", shape: shapeOf(timed), answers: { rateHz: 600 } };
  const { findings } = read(timed, [wrong]);
  expect(findings.map(({ code, severity }) => `${code}:${severity}`)).toEqual(["rate-contradicts:refusal"]);
  expect(told(findings[0])?.message).toContain('600 Hz was stated by the layout "Slow"');
});

test("layouts that fit and differ are named and none is applied; layouts that say the same are one", () => {
  const other: Layout = { ...layout, name: "Field", answers: { ...answers, rateHz: 1000 } };
  const both = read(text, [layout, other]);
  expect(both.findings[0]).toMatchObject({ code: "layout-unclear", severity: "warning" });
  expect(told(both.findings[0])?.message).toContain('"Hall, two plates" and "Field"');
  expect(both.recording).toBeUndefined();
  expect(read(text, [layout, { ...layout, name: "Copy" }]).recording?.rateHz).toBe(1200);
});

test("a file that names nothing is read by its layout with a note", () => {
  const bare = jumpText("", [700], withoutTime).trimStart();
  const nameless: Layout = {
    schemaVersion: 1,
    name: "Bare",
    shape: shapeOf(bare),
    answers: { rateHz: 600, unit: "N" },
  };
  const { recording, findings } = read(bare, [nameless]);
  expect(recording?.rateHz).toBe(600);
  expect(findings.map(({ code, severity }) => `${code}:${severity}`)).toEqual(["layout-unclear:note"]);
});

test("a layout reads back as it was written, whatever the order of its keys", () => {
  const written = writeLayout(layout);
  expect(parseLayout(bytesOf(written))).toEqual({ layout, findings: [] });
  const reversed = { answers, shape: layout.shape, name: layout.name, schemaVersion: 1 } as const;
  expect(writeLayout(reversed)).toBe(written);
});

test("what is no layout is named by its place and not used", () => {
  const broken = (change: object): string => JSON.stringify({ ...layout, ...change });
  const places = (document: string): string[] =>
    parseLayout(bytesOf(document))
      .findings.map((each) => told(each))
      .map(({ where }) => where);
  expect(places("{")).toEqual(["whole document"]);
  expect(places(broken({ name: "" }))).toEqual(["name"]);
  expect(places(broken({ answers: { rateHz: -1 } }))).toEqual(["answers.rateHz"]);
  expect(places(broken({ answers: { massKg: 70 } }))).toEqual(["answers"]);
  expect(places(broken({ schemaVersion: 2 }))).toEqual(["schemaVersion"]);
  fc.assert(
    fc.property(fc.oneof(fc.json(), fc.string()), (document) => {
      const { layout: parsed, findings } = parseLayout(bytesOf(document));
      return parsed === undefined && findings.length > 0;
    }),
  );
});

test("the schema is published as the reader uses it, and another validator agrees with it", () => {
  expect(publishedSchemas["layout.schema.json"]).toEqual(published);
  const validate = new Ajv2020({ strict: false }).compile(publishedSchemas["layout.schema.json"]);
  expect(validate(JSON.parse(writeLayout(layout)))).toBe(true);
  expect(validate({ ...layout, shape: { ...layout.shape, columns: [] } })).toBe(false);
  expect(validate({ ...layout, answers: { unit: "V" } })).toBe(false);
});

test("schema and type hold the same entries", () => {
  // Either assignment stops compiling when schema and type part.
  const fromSchema = (parsed: z.output<typeof layoutSchema>): Layout => parsed;
  const toSchema = (own: Layout): z.output<typeof layoutSchema> => own;
  expect(toSchema(fromSchema(layout))).toBe(layout);
});
