import { expect, test } from "vitest";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { FileTexts } from "../../../electron/workspace/file-lines.ts";

const file = (text: string, bytes = new TextEncoder().encode(text)) => recordingFile("a.csv", bytes);

test("lines are numbered from 1 and given as they stand, whatever ends them", () => {
  for (const lineBreak of ["\n", "\r\n", "\r", "\r\r\n"]) {
    const texts = new FileTexts();
    const whole = file(["one", "two", "", "four", ""].join(lineBreak));
    expect(texts.linesOf(whole, undefined, 1, 10)).toEqual({ first: 1, lines: ["one", "two", "", "four"], total: 4 });
    expect(texts.linesOf(whole, undefined, 3, 1)).toEqual({ first: 3, lines: [""], total: 4 });
    expect(texts.linesOf(whole, undefined, 9, 5)).toEqual({ first: 9, lines: [], total: 4 });
  }
});

test("another file is not taken for the one looked at before", () => {
  const texts = new FileTexts();
  texts.linesOf(file("one\ntwo"), undefined, 1, 5);
  expect(texts.linesOf(file("alone"), undefined, 1, 5)).toEqual({ first: 1, lines: ["alone"], total: 1 });
});

test("an empty file has no line, and what is no text shows as such", () => {
  const texts = new FileTexts();
  expect(texts.linesOf(file(""), undefined, 1, 5)).toEqual({ first: 1, lines: [], total: 0 });
  expect(texts.linesOf(file("", Uint8Array.of(1, 65, 255)), undefined, 1, 5).lines).toEqual(["\ufffdA\ufffd"]);
});

test("UTF-16 is broken into lines by its own units", () => {
  const bytes = Uint8Array.from([..."a\nĊb"].flatMap((sign) => [sign.charCodeAt(0) & 255, sign.charCodeAt(0) >> 8]));
  const reading = { kind: "delimited", encoding: "UTF-16LE" } as never;
  expect(new FileTexts().linesOf(file("", bytes), reading, 1, 5).lines).toEqual(["a", "Ċb"]);
});
