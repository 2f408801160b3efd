import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { leftAsideWords } from "../../../../core/recording/left-aside-words.ts";
import { resultCsvColumns } from "../../../../core/sheet/result-csv.ts";
import { otherKindOfFile } from "../../../../electron/files/left-aside/other-kind.ts";

const bytesOf = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));
const kindOf = (name: string, content: string) => otherKindOfFile(name, bytesOf(content));

// The first bytes as the formats' specifications give them.
test.each([
  ["picture", "jump.csv", "\x89PNG\r\n\x1a\n\0\0\0\rIHDR"],
  ["picture", "IMG_1.JPG", "\xff\xd8\xff\xe0\0\x10JFIF"],
  ["picture", "drawing.svg", '<?xml version="1.0"?>\n<svg xmlns="x"></svg>'],
  ["film", "jump.mp4", "\0\0\0\x18ftypmp42"],
  ["sound file", "note.wav", "RIFF\x24\0\0\0WAVEfmt "],
  ["document", "letter.pdf", "%PDF-1.7\n1 0 obj"],
  ["document", "letter.docx", "PK\x03\x04\x14\0\0\0\0\0[Content_Types].xmlPK\x03\x04word/document.xml"],
  ["document", "old.doc", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0"],
  ["web page", "results.html", "<!DOCTYPE html>\n<html></html>"],
  ["program file", "setup.exe", "MZ\x90\0\x03\0\0\0"],
  ["text", "to-do.txt", "Call the physiotherapist\nbring shoes\n"],
  ["text", "diary.txt", "3 jumps done and 2 to go.\nPain 1 of 10 after the 4 th.\n"],
  ["text", "desktop.ini", "[.ShellClassInfo]\r\nIconFile=a.ico\r\n"],
  ["text", "README.md", "| jump | cm |\n|---|---|\n| 1 | 28.3 |\n| 2 | 27.9 |\n"],
  ["text", "settings.json", '{"rate": 1000}'],
  ["table of results", "results.csv", `${resultCsvColumns.join(",")}\n`],
  ["hidden file", ".DS_Store", "\0\0\0\x01Bud1"],
])("a %s is known by its content, whatever it is called: %s", (kind, name, content) => {
  expect(kindOf(name, content)).toBe(kind);
});

test.each([
  ["rows of numbers", "picture.png", "0.001;312.5\n0.002;313.1\n"],
  ["one row", "one-row.txt", "0.000,310.25,330.50"],
  ["rows with words among them", "a.txt", "stand;1;5.5\nstand;2;5.6\njump;3;5.7\n"],
  ["names of columns without a row", "names-only.csv", "time (s),left (N),right (N)\n"],
  ["nothing at all", "empty.csv", ""],
  ["an unknown binary format", "trial.bin", "\x07\x01\x02\x03\0\0\0\x01\x02"],
  ["a spreadsheet", "jump.xlsx", "PK\x03\x04\x14\0\0\0\0\0[Content_Types].xmlPK\x03\x04xl/workbook.xml"],
  ["an old spreadsheet", "jump.xls", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0"],
  ["a packed file", "jump.csv.gz", "\x1f\x8b\x08\0"],
  ["many numbers in another notation", "jump.json", `{"left":[${"312.5,".repeat(30)}1]}`],
])("what may be a recording stays, readable or not: %s", (_, name, content) => {
  expect(kindOf(name, content)).toBeUndefined();
});

test("text longer than what is looked at stays: rows may stand further down", () => {
  expect(kindOf("long.txt", "nothing yet\n".repeat(10_000))).toBeUndefined();
});

test("of the zoo every file that holds a table, or C3D, stays, and the letter, the page and the picture do not", () => {
  const folder = new URL("../../../zoo/files/", import.meta.url);
  const aside = readdirSync(folder).filter(
    (name) => otherKindOfFile(name, new Uint8Array(readFileSync(new URL(name, folder)))) !== undefined,
  );
  expect(aside.toSorted()).toEqual(["letter.txt", "page.html", "picture.png", "results.json"]);
});

test("the outcome counts each kind and gives names, the first three of many", () => {
  const pictures = ["a.png", "b.png", "c.png", "d.png", "e.png"].map((path) => ({ path, kind: "picture" as const }));
  expect(leftAsideWords([...pictures, { path: "to-do.txt", kind: "text" }])).toBe(
    "Left aside, as they are no recordings: 5 pictures (a.png, b.png, c.png and 2 more) and 1 text (to-do.txt).",
  );
  expect(leftAsideWords([])).toBe("");
});
