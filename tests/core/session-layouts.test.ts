import { expect, test } from "vitest";
import { readTable } from "../../core/bytes/read-table.ts";
import { layoutShape } from "../../core/recording/layout-shape.ts";
import { readSessionRecording } from "../../core/session/read-session-recording.ts";
import type { SessionInput } from "../../core/session/session-input.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import type { Layout } from "../../core/stated/layout.ts";
import { jumpText } from "./recording/jump-text.ts";

function fileOf(path: string, text: string) {
  return { path, bytes: new TextEncoder().encode(text), sha256: "" };
}

function read(file: ReturnType<typeof fileOf>, parts: Partial<SessionInput>) {
  const input: SessionInput = {
    folder: "",
    files: [file],
    unreadable: [],
    description: {},
    descriptionFindings: [],
    stated: {},
    ...parts,
  };
  return readSessionRecording(file, input, defaultSettings);
}

const plain = fileOf("a.csv", jumpText("A,B", [350, 340], { time: () => "" }));
const { table } = readTable(plain.bytes);
const layout: Layout = {
  schemaVersion: 1,
  name: "Hall",
  shape: layoutShape(table!),
  answers: { rateHz: 1000, unit: "N", left: 1, right: 2, platesStated: true },
};

test("a session's saved layouts answer for its files, session.json and options outrank them", () => {
  const proofs = (parts: Partial<SessionInput>) =>
    read(plain, { layouts: [layout], ...parts }).recording?.plates.map(({ limb, proof }) => [limb, proof]);
  expect(read(plain, {}).recording).toBeUndefined();
  expect(proofs({})).toEqual([
    ["left", "layout"],
    ["right", "layout"],
  ]);
  const entry = { file: "a.csv", columns: { left: 2, right: 1 } };
  expect(proofs({ description: { files: [entry] } })).toEqual([
    ["right", "stated"],
    ["left", "stated"],
  ]);
  expect(read(plain, { layouts: [layout], stated: { layout: { rateHz: 500 } } }).recording?.rateHz).toBe(500);
});

test("feet that the tester states for a plate outrank the layout's", () => {
  const description = {
    plates: [
      { column: "A", foot: "right" as const },
      { column: "B", foot: "left" as const },
    ],
  };
  expect(
    read(plain, { layouts: [layout], description }).recording?.plates.map(({ limb, proof }) => [limb, proof]),
  ).toEqual([
    ["right", "stated"],
    ["left", "stated"],
  ]);
});

test("plates exchanged by an option are exchanged whatever session.json says of them", () => {
  const named = fileOf("d.csv", jumpText("time (s),left (N),right (N)", [350, 340]));
  const description = {
    plates: [
      { column: "left", foot: "left" as const },
      { column: "right", foot: "right" as const },
    ],
  };
  const { recording } = read(named, { description, stated: { layout: { swapPlates: true } } });
  expect(recording?.plates.map(({ limb, proof }) => [limb, proof])).toEqual([
    ["right", "stated"],
    ["left", "stated"],
  ]);
});

test("the session's mass turns body weights into newtons, an option's outranks it", () => {
  const weights = fileOf("b.csv", jumpText("time (s),force (BW)", [1], { decimals: 6 }));
  expect(read(weights, {}).findings.map(({ code }) => code)).toEqual(["mass-missing"]);
  const massOf = (parts: Partial<SessionInput>) => {
    const { reading } = read(weights, parts);
    return reading?.kind === "delimited" ? reading.mass?.massKg : undefined;
  };
  expect(massOf({ description: { massKg: 69.4 } })).toBe(69.4);
  expect(massOf({ description: { massKg: 69.4 }, stated: { massKg: 70 } })).toBe(70);
});

test("two plates under each foot are stated in session.json with plus signs", () => {
  const four = fileOf("c.csv", jumpText("time (s),P1 (N),P2 (N),P3 (N),P4 (N)", [150, 200, 145, 199]));
  const entry = { file: "c.csv", columns: { left: "2+3", right: "P3+P4" } };
  const { recording } = read(four, { description: { files: [entry] } });
  expect(recording?.plates.map(({ name, limb, proof }) => [name, limb, proof])).toEqual([
    ["P1 + P2", "left", "stated"],
    ["P3 + P4", "right", "stated"],
  ]);
});
