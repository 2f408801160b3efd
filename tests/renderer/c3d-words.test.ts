import { expect, test } from "vitest";
import type { FileReading } from "../../core/recording/file-reading.ts";
import { answersFrom, nothingWritten, readRole } from "../../renderer/recordings/answers.ts";
import { formWords, originWords, readingWords, roleWords } from "../../renderer/recordings/reading-words.ts";
import { readStanding } from "../core/recording/c3d/read-written-c3d.ts";

function readingOf(): FileReading {
  const { reading } = readStanding();
  if (reading === undefined) throw new Error("The file was not read.");
  return reading;
}

test("a C3D file is put in words like a table, with its platforms for plates", () => {
  const reading = readingOf();
  expect(readingWords(reading)).toBe("C3D, Intel byte order · two plates: left, right · N · 1000 Hz");
  expect(formWords(reading)).toBe("Intel byte order, integers · 20 frames");
  expect(originWords(reading)).toBe("unit N, from the header · rate 1000 Hz, from the frame rate");
  expect(reading.columns.map(roleWords)).toEqual(["force, left", "force, right"]);
});

test("its platforms are answered for in the form that asks about columns", () => {
  const { columns } = readingOf();
  expect(columns.map(readRole)).toEqual(["left", "right"]);
  const roles = new Map([
    [1, "right"],
    [2, "left"],
  ] as const);
  expect(answersFrom({ ...nothingWritten, roles }, columns)).toEqual({ answers: { columns: { right: 1, left: 2 } } });
});
