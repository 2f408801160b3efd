import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { ExpectedC3d, ExpectedReading, ExpectedTable } from "../../build/zoo/zoo-file.ts";
import { zooFiles } from "../../build/zoo/zoo-files.ts";
import { zooTexts } from "../../build/zoo/zoo-texts.ts";
import { isC3d } from "../../core/bytes/c3d/is-c3d.ts";
import { readTable } from "../../core/bytes/read-table.ts";
import { readC3dRecording } from "../../core/recording/c3d/read-c3d-recording.ts";
import type { FileInspection } from "../../core/recording/file-inspection.ts";
import type { Reader } from "../../core/recording/reader.ts";
import { readerOf, readers } from "../../core/recording/readers.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { parseLayout } from "../../core/stated/layout-file.ts";
import { parseSessionFile } from "../../core/stated/session-file.ts";
import { fileOutcome } from "../../electron/boundary/file-outcome.ts";
import { c3dSamples } from "../core/bytes/c3d/c3d-samples.ts";
import { codesOf, readBytes } from "./read-zoo.ts";

// Expected readings come from the script that writes the files (build/zoo): it knows what it wrote.

const folder = new URL("files/", import.meta.url);
const names = readdirSync(folder).sort((one, other) => (one < other ? -1 : 1));
const written = zooFiles();
const expectations: Readonly<Record<string, ExpectedReading>> = JSON.parse(
  readFileSync(new URL("expected.json", import.meta.url), "utf8"),
);
const files = names.map((name) => ({
  name,
  bytes: new Uint8Array(readFileSync(new URL(encodeURIComponent(name), folder))),
  expected: expectations[name]!,
}));

/** Type 4 platforms go through a calibration matrix, whose products round in the last digits. */
const c3dToleranceNewtons = 1e-9;

test("the committed files and expectations are what the script writes, byte for byte", () => {
  expect(names).toEqual(written.map(({ name }) => name));
  for (const [index, { name, bytes }] of written.entries()) {
    expect(Buffer.compare(bytes, files[index]!.bytes), name).toBe(0);
  }
  expect(readFileSync(new URL("expected.json", import.meta.url), "utf8")).toBe(zooTexts(written));
});

test("the zoo holds at least 80 files and stays small", () => {
  expect(files.length).toBeGreaterThanOrEqual(80);
  expect(files.reduce((sum, { bytes }) => sum + bytes.length, 0)).toBeLessThan(2e6);
});

test.each(files)("$name is read as expected", ({ name, bytes, expected }) => {
  const silent = readBytes(name, bytes);
  expect(codesOf(silent.read)).toEqual(expected.findings);
  expect(fileOutcome(silent.read.findings, [])).toBe(expected.outcome);
  expect(silent.read.recording !== undefined).toBe(expected.outcome === "understood");

  const { read, inspection } = readBytes(name, bytes, expected.answers, expected.sampleRows);
  if (expected.answeredFindings !== undefined) expect(codesOf(read)).toEqual(expected.answeredFindings);
  expect(read.recording?.plates.map(({ limb }) => limb) ?? []).toEqual(expected.plates.map(({ limb }) => limb));
  const tolerance = expected.c3d === undefined ? 0 : c3dToleranceNewtons;
  for (const [index, plate] of expected.plates.entries()) {
    for (const [place, row] of expected.sampleRows.entries()) {
      const difference = Math.abs(read.recording!.plates[index]!.force[row]! - plate.newtons[place]!);
      expect(difference, `plate ${index + 1}, row ${row}`).toBeLessThanOrEqual(tolerance);
    }
  }
  expect(read.recording?.rateHz).toBe(expected.rateHz);
  if (expected.rateFrom !== undefined) expect(read.reading?.rateFrom).toBe(expected.rateFrom);
  if (expected.table !== undefined) expectTable(inspection, expected.table);
  else if (expected.c3d !== undefined) expectC3d(inspection, expected.c3d);
  else
    expect(inspection.kind === "c3d" ? inspection.channels : inspection.kind).toEqual(
      inspection.kind === "c3d" ? [] : "unreadable",
    );
});

function expectTable(inspection: FileInspection, expected: ExpectedTable): void {
  if (inspection.kind !== "delimited") throw new Error(`read as ${inspection.kind}`);
  const { columns, ...dialect } = expected;
  expect(inspection).toMatchObject(dialect);
  expect(
    inspection.channels.map(({ name, role, limb, unit, values }) => ({
      name,
      role,
      ...(limb === undefined ? {} : { limb }),
      unit,
      values: values.map((value) => (Number.isNaN(value) ? null : value)),
    })),
  ).toEqual(columns);
}

/** Neither a saved layout nor a description of a session. */
function expectNoOtherReading(bytes: Uint8Array): void {
  expect(parseLayout(bytes).layout).toBeUndefined();
  const { description, findings } = parseSessionFile(bytes);
  expect(findings).not.toEqual([]);
  expect(description).toEqual(parseSessionFile(new Uint8Array(0)).description);
}

function expectC3d(inspection: FileInspection, { sampleCount, ...expected }: ExpectedC3d): void {
  if (inspection.kind !== "c3d") throw new Error(`read as ${inspection.kind}`);
  expect({
    byteOrder: inspection.facts?.byteOrder,
    dataType: inspection.facts?.dataType,
    platformTypes: inspection.platforms.map(({ type }) => type),
    channelLabels: inspection.channels.map(({ label }) => label),
  }).toEqual(expected);
  expect(inspection.sampleCount).toBe(expected.channelLabels.length === 0 ? inspection.sampleCount : sampleCount);
}

test.each(written.filter(({ expected }) => expected.table !== undefined))(
  "every number of $name is what Number() makes of its text",
  ({ bytes, cells, expected }) => {
    const { answers } = expected;
    const { table } = readTable(bytes, answers?.decimalMark === undefined ? {} : { decimalMark: answers.decimalMark });
    for (const [column, texts] of cells!.entries()) {
      const values = table!.columns[column];
      if (values === undefined) continue;
      for (const [row, value] of values.entries()) {
        const text = texts[row]!;
        const number = text.trim() === "" ? Number.NaN : Number(text);
        if (!Object.is(value, number)) expect(value, `column ${column + 1}, row ${row}`).toBe(number);
      }
    }
  },
);

/** The files each reader takes; each format's own truth beside what the script wrote. */
const filesOfReader: Readonly<
  Record<Reader["kind"], readonly { readonly name: string; readonly bytes: Uint8Array }[]>
> = {
  c3d: [...files.filter(({ expected }) => expected.c3d !== undefined), ...c3dSamples()],
  delimited: files.filter(({ expected }) => expected.c3d === undefined && expected.findings[0] !== "truncated:refusal"),
};

const pairs = readers.flatMap((reader) =>
  readers
    .filter((other) => other !== reader)
    .flatMap((other) => filesOfReader[other.kind].map((file) => ({ ...file, reader, other }))),
);

test.each(pairs)("the reader of $reader.kind files makes nothing of $name, a $other.kind file", (pair) => {
  const { name, bytes, reader, other } = pair;
  expect(readerOf(bytes).kind).toBe(other.kind);
  const file = { path: name, bytes, sha256: "" };
  const { recording, findings } = reader.read(file, { answers: {}, layouts: [] }, defaultSettings);
  expect(recording).toBeUndefined();
  expect(findings.some(({ severity }) => severity === "refusal")).toBe(true);
  expectNoOtherReading(bytes);
});

test.each([...files.filter(({ expected }) => expected.c3d !== undefined), ...c3dSamples()])(
  "the reader of tables makes none of the C3D file $name, and no other reader takes it for its own",
  ({ bytes }) => {
    expect(isC3d(bytes)).toBe(true);
    const { table, findings } = readTable(bytes);
    expect(table).toBeUndefined();
    expect(findings.map(({ code, severity }) => `${code}:${severity}`)).toEqual(["not-data:refusal"]);
    expectNoOtherReading(bytes);
  },
);

test.each(files.filter(({ expected }) => expected.c3d === undefined && expected.findings[0] !== "truncated:refusal"))(
  "the reader of C3D files makes nothing of $name, and no layout or session is read from it",
  ({ bytes }) => {
    expect(isC3d(bytes)).toBe(false);
    const { recording, findings } = readC3dRecording(bytes, {}, defaultSettings);
    expect(recording).toBeUndefined();
    expect(findings.some(({ severity }) => severity === "refusal")).toBe(true);
    expectNoOtherReading(bytes);
  },
);
