import { expect, test } from "vitest";
import type { FileReading } from "../../core/recording/file-reading.ts";
import { columnsAnswer, readRole } from "../../renderer/recordings/answers.ts";
import { formWords, rateWords, unitWords } from "../../renderer/recordings/reading-words.ts";
import { readStanding } from "../core/recording/c3d/read-written-c3d.ts";

function readingOf(): FileReading {
  const { reading } = readStanding();
  if (reading === undefined) throw new Error("The file was not read.");
  return reading;
}

test("a C3D file is put in words like a table", () => {
  const reading = readingOf();
  expect(formWords(reading)).toBe("Intel byte order, integers · 20 frames");
  expect(unitWords(reading)).toBe("N, from the header");
  expect(rateWords(reading)).toBe("from the frame rate");
});

test("its platforms are answered for in the form that asks about columns", () => {
  const { columns } = readingOf();
  expect(columns.map(readRole)).toEqual(["left", "right"]);
  expect(columnsAnswer(columns, 2, "left")).toEqual({ left: "1+2" });
});
