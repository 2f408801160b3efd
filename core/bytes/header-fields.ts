import { type Delimiter, splitFields } from "./fields.ts";
import { isBlankLine, withoutCommentMark } from "./skipped-lines.ts";
import type { TextField } from "./table.ts";

/** A key holds a letter, so that the clock 10:15 is none; a mark directly before `//` belongs to an address. */
const keyAndValue = /^\s*"?([^:=]*\p{L}[^:=]*?)"?\s*[:=](?!\/\/)\s*(.*?)\s*$/u;

/** No setting: it tells a key from a sentence and touches no number. */
const longestKey = 60;

/**
 * Lines that state several facts side by side are rare; more cells than this are a table's row. No setting: it tells a
 * line of facts from a row.
 */
const mostCells = 24;

/** The facts of a line such as `Rate: 1000 Hz`, `mass;69,4`, `side=left` or `date<tab>2026-01-17`; none for other lines. */
export function fieldsOfLine(written: string, line: number, delimiter: Delimiter): TextField[] {
  const text = withoutCommentMark(written, delimiter);
  if (isBlankLine(text)) return [];
  const order: readonly Delimiter[] = [delimiter, "tab", "semicolon", "pipe", "comma"];
  for (const separator of order) {
    if (separator === "spaces" || separator === "none") continue;
    const cells = splitFields(text, separator).map((cell) => cell.trim());
    const filled = cells.filter((cell) => cell !== "");
    if (cells.length < 2 || filled.length > mostCells) continue;
    const pairs = filled.map((cell) => pairOf(cell, line));
    if (filled.length > 1 && pairs.every((pair) => pair !== undefined && pair.value !== "")) {
      return pairs.filter((pair) => pair !== undefined);
    }
    const [key = "", ...values] = cells;
    const isFact = separator === delimiter ? values.some((value) => value !== "") : cells.length === 2;
    if (pairOf(text, line) === undefined && isFact && isKey(key)) return [{ key, value: joined(values), line }];
    if (/[:=]$/.test(key) && isKey(key.slice(0, -1))) {
      return [{ key: key.slice(0, -1).trim(), value: joined(values), line }];
    }
  }
  const pair = pairOf(text, line);
  return pair === undefined ? [] : [{ ...pair, value: pair.value.replace(/[\s;,|"]+$/, "") }];
}

function pairOf(text: string, line: number): TextField | undefined {
  const found = keyAndValue.exec(text);
  if (found === null || !isKey(found[1]!)) return undefined;
  return { key: found[1]!.trim(), value: found[2]!, line };
}

function isKey(key: string): boolean {
  return /\p{L}/u.test(key) && key.length <= longestKey;
}

function joined(values: readonly string[]): string {
  return values.filter((value) => value !== "").join(" ");
}
