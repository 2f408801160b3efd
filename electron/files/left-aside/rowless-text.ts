import { parseClockText } from "../../../core/bytes/clock-text.ts";
import { type Delimiter, splitFields, splitNames } from "../../../core/bytes/fields.ts";
import { isNumberInAnyMarks } from "../../../core/bytes/number-marks.ts";
import { isMissing } from "../../../core/bytes/number-text.ts";
import { readTable } from "../../../core/bytes/read-table.ts";
import { readText, type TextBytes, textBetween } from "../../../core/bytes/text-bytes.ts";
import { readColumnHints } from "../../../core/recording/column-hint.ts";
import { headBytes } from "./file-signature.ts";

const delimiters: readonly Delimiter[] = ["semicolon", "tab", "pipe", "comma", "spaces"];

/** Notes and descriptions by their names, where the content is text too: their tables of numbers are no samples. */
const notesEndings = new Set([".md", ".json"]);

/** So many numbers in a row between commas may be samples, in whatever form they are written. */
const manyNumbers = /(?:-?\d[\d.eE+-]*\s*,\s*){20}/;

/**
 * True for text that surely holds no samples: it holds no rows of numbers, with words among them or without, and
 * no line names columns of time or force. Larger texts than what is looked at may hold rows further down, and stay; so does what is empty.
 */
export function holdsNoRows(head: Uint8Array, byteLength: number, ending: string): boolean {
  if (byteLength > headBytes && !notesEndings.has(ending)) return false;
  const text = readText(head);
  const content = wholeText(text);
  if (holdsControls(text.bytes)) return false;
  if (notesEndings.has(ending)) return !manyNumbers.test(content);
  const lines = content.split(/\r\n|\n|\r/).filter((line) => line.trim() !== "");
  if (lines.length === 0 || lines.some((line) => isRow(line) || namesColumns(line))) return false;
  // Rows with words among their numbers.
  return readTable(head).table === undefined;
}

function wholeText(text: TextBytes): string {
  return textBetween(text, 0, text.bytes.length);
}

/** True for control characters that text does not hold; blanks, line ends, escape and the end mark of DOS it may. */
function holdsControls(bytes: Uint8Array): boolean {
  return bytes.some((byte) => byte < 9 || (byte > 13 && byte < 26) || (byte > 27 && byte < 32));
}

/** True when every cell is a number, a clock or nothing, and one at least a number. */
function isRow(line: string): boolean {
  if (isNumberInAnyMarks(line)) return true;
  return delimiters.some((delimiter) => {
    const cells = splitFields(line, delimiter);
    return (
      cells.some((cell) => !isMissing(cell) && isNumberInAnyMarks(cell)) &&
      cells.every((cell) => isMissing(cell) || isNumberInAnyMarks(cell) || parseClockText(cell) !== undefined)
    );
  });
}

/** True when several cells are named, and one as time or force. */
function namesColumns(line: string): boolean {
  return delimiters.some((delimiter) => {
    const cells = splitNames(line, delimiter, 0);
    if (cells.length < 2 || delimiter === "spaces") return false;
    return readColumnHints(cells, []).some(({ kind }) => kind !== "unknown" && kind !== "other");
  });
}
