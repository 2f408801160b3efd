import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import { expect, test } from "vitest";
import type { FileInspection, TableInspection } from "../../../core/recording/file-inspection.ts";
import { inspectFile } from "../../../core/recording/inspect-file.ts";
import type { LayoutAnswers } from "../../../core/recording/reading-statements.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { jumpText } from "./jump-text.ts";

const header = "Sampling rate: 1000 Hz\nMass: 69.4 kg\ntime (s),left (N),right (N)";
const text = jumpText(header, [350, 340]);

function inspectBytes(bytes: Uint8Array, sampleIndices: readonly number[] = [], answers: LayoutAnswers = {}) {
  const file = { path: "trial.csv", bytes, sha256: "" };
  return inspectFile(file, { answers, layouts: [], sampleIndices }, defaultSettings);
}

function inspectText(content: string, sampleIndices: readonly number[] = [], answers: LayoutAnswers = {}) {
  const inspection = inspectBytes(new TextEncoder().encode(content), sampleIndices, answers);
  return tableOf(inspection);
}

function tableOf(inspection: FileInspection): TableInspection {
  if (inspection.kind !== "delimited") throw new Error(`A text was inspected as ${inspection.kind}.`);
  return inspection;
}

test("an inspection holds dialect, header, hints, rate with its source, channels and plates", () => {
  const inspection = inspectText(text, [0, 1300, 2999]);
  expect(inspection).toMatchObject({
    kind: "delimited",
    encoding: "UTF-8",
    delimiter: "comma",
    decimalMark: "point",
    thousandsMark: "none",
    headerLines: 3,
    header: header.split("\n"),
    rows: 3000,
    firstRowLine: 4,
    lastRowLine: 3003,
    rateHz: 1000,
    rateFrom: "time column",
    rateSource: "column time (s)",
    timeUnit: "s",
    forceUnit: "N",
    forceUnitFrom: "header",
    recording: { rateHz: 1000, sampleCount: 3000, timeOriginSeconds: 0 },
    findings: [],
  });
  expect(inspection.hints.map(({ kind, value }) => [kind, value])).toEqual([
    ["rate", 1000],
    ["mass", 69.4],
  ]);
  expect(
    inspection.channels.map(({ name, role, limb, unit, confidence }) => [name, role, limb, unit, confidence]),
  ).toEqual([
    ["time (s)", "time", undefined, "s", "certain"],
    ["left (N)", "force", "left", "N", "certain"],
    ["right (N)", "force", "right", "N", "certain"],
  ]);
  for (const channel of inspection.channels) expect(channel.reason).not.toBe("");
});

test("figures of a channel are those of its rows, values at samples with every digit", () => {
  const rows = text.trimEnd().split("\n").slice(3);
  const left = rows.map((row) => Number(row.split(",")[1]));
  const [, channel] = inspectText(text, [0, 1300, 3000]).channels;
  expect(channel).toMatchObject({ minimum: Math.min(...left), maximum: Math.max(...left), unreadable: 0 });
  const relativeTolerance = 1e-12; // sums of 3000 doubles in another order
  const mean = left.reduce((sum, value) => sum + value, 0) / left.length;
  expect(Math.abs((channel?.mean ?? 0) / mean - 1)).toBeLessThan(relativeTolerance);
  expect(channel?.values).toEqual([left[0], left[1300], null]);
});

test("channels are given as written, plates in newtons upwards", () => {
  const inspection = inspectText(jumpText("time (s),left (kN),right (kN)", [-0.35, -0.34], { decimals: 6 }), [0]);
  expect(inspection.channels[1]).toMatchObject({ unit: "kN" });
  expect(inspection.channels[1]?.values[0]).toBeLessThan(0);
  const factor = -1000;
  expect(inspection.plates[0]?.newtons.values[0]).toBe((inspection.channels[1]?.values[0] ?? 0) * factor);
  expect(inspection.findings.map(({ code }) => code)).toEqual(["sign-turned"]);
});

test("a refused file still shows everything that was read of it, without plates", () => {
  const inspection = inspectText(jumpText("time (s),plate 1,plate 2", [350, 340]));
  expect(inspection.findings.map(({ code }) => code)).toContain("columns-unclear");
  expect(inspection.channels.map(({ maximum }) => (maximum ?? 0) > 1)).toEqual([true, true, true]);
  expect(inspection.plates).toEqual([]);
  expect("recording" in inspection).toBe(false);
});

test("words beside numbers are channels without figures, clocks are seconds", () => {
  const rows = Array.from(
    { length: 60 },
    (_, index) => `10:15:00.${String(index).padStart(3, "0")};${index % 2 ? "on" : "off"};${700 + index}.5`,
  );
  const inspection = inspectText(`clock;light;force (N)\n${rows.join("\n")}\n`);
  expect(inspection.channels.map(({ kind }) => kind)).toEqual(["clock", "text", "number"]);
  expect(inspection.channels[0]?.minimum).toBe(10 * 3600 + 15 * 60);
  expect("minimum" in inspection.channels[1]!).toBe(false);
});

test("what is no table is inspected as unreadable, with the reason", () => {
  expect(inspectBytes(new Uint8Array(0))).toMatchObject({ kind: "unreadable", findings: [{ code: "empty" }] });
  expect(inspectBytes(new TextEncoder().encode("No jumps today.\n"))).toMatchObject({ kind: "unreadable" });
});

test("every changed letter of the header, of a name or of a unit shows in the inspection", () => {
  const original = JSON.stringify(inspectText(text));
  const length = header.length;
  for (let place = 0; place < length; place++) {
    for (const letter of ["x", "7"]) {
      if (text[place] === letter) continue;
      const changed = text.slice(0, place) + letter + text.slice(place + 1);
      const bytes = new TextEncoder().encode(changed);
      expect(JSON.stringify(inspectBytes(bytes)), `character ${place} as ${letter}`).not.toBe(original);
    }
  }
});

test.each([
  ["a scale", (value: number) => (value * 1.001).toFixed(6)],
  ["an offset", (value: number) => (value + 0.01).toFixed(6)],
  ["a sign", (value: number) => (-value).toFixed(3)],
])("%s on one channel shows in its minimum, maximum and mean", (_, change) => {
  const changed = text.split("\n").map((line, index) => {
    const [time, left, right] = line.split(",");
    return index < 3 || right === undefined ? line : [time, left, change(Number(right))].join(",");
  });
  const [before, after] = [inspectText(text), inspectText(changed.join("\n"))];
  expect(after.channels[1]).toEqual(before.channels[1]);
  const [one, other] = [before.channels[2]!, after.channels[2]!];
  expect(other.minimum).not.toBe(one.minimum);
  expect(other.maximum).not.toBe(one.maximum);
  expect(other.mean).not.toBe(one.mean);
});

test("one changed value shows in the mean of its channel", () => {
  const original = inspectText(text);
  for (const row of [0, 777, 2999]) {
    const lines = text.split("\n");
    const cells = lines[row + 3]!.split(",");
    lines[row + 3] = [cells[0], (Number(cells[1]) + 1).toFixed(3), cells[2]].join(",");
    expect(inspectText(lines.join("\n")).channels[1]?.mean).not.toBe(original.channels[1]?.mean);
  }
});

test("any bytes and any answers are inspected without an exception, and the result is plain data", () => {
  const piece = fc.constantFrom(
    ...'0123456789.,;|\t \n"#:=+-'.split(""),
    "left",
    "Fz D (N)",
    "Fz G (BW)",
    "time (s)",
    "Sampling rate: 1000 Hz\n",
    "Units: kN\n",
    "10:15:03.125",
    "Left heel",
    "0.001",
    "1e400",
    "é",
  );
  const key = fc.option(fc.constantFrom<string | number>(1, 2, "1+2", "left", "none", ""), { nil: undefined });
  const answers = fc.record(
    {
      time: key,
      left: key,
      right: key,
      total: key,
      swapPlates: fc.boolean(),
      resample: fc.boolean(),
      rateHz: fc.double(),
    },
    { requiredKeys: [] },
  );
  const bytes = fc.oneof(
    fc.array(piece, { maxLength: 60 }).map((pieces) => new TextEncoder().encode(pieces.join(""))),
    fc.uint8Array({ maxLength: 200 }),
  );
  fc.assert(
    fc.property(bytes, answers, (file, said) => {
      const known = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
      const inspection = inspectBytes(file, [0, 5], known);
      expect(JSON.parse(JSON.stringify(inspection))).toEqual(inspection);
      return inspection.kind !== "unreadable" || inspection.findings.length > 0;
    }),
    { numRuns: 3000 },
  );
});

// The rows of the sample traces, taken apart by splitting lines alone: a second, obvious reading of the same bytes.
const folder = fileURLToPath(new URL("../../../sample-traces/", import.meta.url));
const sampled = readdirSync(folder, { recursive: true, encoding: "utf8" })
  .filter((path) => path.endsWith(".csv") && !path.startsWith("doubtful"))
  .sort()
  .filter((_, index) => index % 17 === 0);

test.each(sampled)("%s reads as splitting its lines does", (path) => {
  const bytes = new Uint8Array(readFileSync(folder + path));
  const lines = new TextDecoder()
    .decode(bytes)
    .replace(/^\ufeff/, "")
    .split(/\r?\n/);
  const inspection = tableOf(inspectBytes(bytes, [0, 100, 1000]));
  const isRow = (line: string): boolean => /^-?\d[\d.,;\t -]*$/.test(line);
  const first = lines.findIndex(isRow);
  const delimiter = [";", "\t", " ", ","].find((mark) => lines[first]!.includes(mark)) ?? ";";
  const samples = [0, 100, 1000];
  const cell = (sample: number, column: number): number =>
    Number(lines[first + sample]!.split(delimiter)[column]!.replace(",", "."));
  expect(inspection.headerLines).toBe(first);
  expect(inspection.rows).toBe(lines.filter(isRow).length);
  expect(inspection.channels.length).toBe(lines[first]!.split(delimiter).length);
  inspection.channels.forEach((channel, column) => {
    expect(channel.values).toEqual(samples.map((sample) => cell(sample, column)));
  });
  if (inspection.channels.length > 1) {
    expect(inspection.channels[0]?.role).toBe("time");
    const perSecond = lines.slice(0, first).join().includes("ms") ? 1000 : 1;
    expect(inspection.rateHz).toBe(Math.round((100 * perSecond) / (cell(100, 0) - cell(0, 0))));
  }
  const newtons = inspection.forceUnit === "kN" ? 1000 : 1;
  inspection.plates.forEach((plate, index) => {
    expect(plate.newtons.values).toEqual(samples.map((sample) => cell(sample, index + 1) * newtons));
  });
});
