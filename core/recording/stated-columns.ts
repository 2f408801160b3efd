import type { ColumnHint } from "./column-hint.ts";
import type { ColumnKey } from "./column-key.ts";

type Columns = readonly (Float64Array | undefined)[];

/** What a person writes in place of a column where a file's time column is not to be used. */
export const noColumn = "none";

/**
 * Indices of the columns a key means, or a sentence that says why there are none. A key is a position from 1, a name
 * with or without its unit, or several of them joined by plus signs ("2+3"), which are added.
 */
export function findColumns(
  key: ColumnKey,
  hints: readonly ColumnHint[],
  columns: Columns,
): readonly number[] | string {
  const whole = findColumn(key, hints, columns);
  const parts = String(key).split("+");
  if (typeof whole === "number") return [whole];
  if (parts.length < 2) return whole;
  const found: number[] = [];
  for (const part of parts) {
    const index = findColumn(part.trim(), hints, columns);
    if (typeof index === "string") return index;
    if (found.includes(index)) return `Column ${index + 1} was stated twice.`;
    found.push(index);
  }
  return found;
}

function findColumn(key: ColumnKey, hints: readonly ColumnHint[], columns: Columns): number | string {
  const wanted = String(key).trim().toLowerCase();
  const matches = (name: string): boolean => typeof key === "string" && name.toLowerCase() === wanted;
  let found = hints.flatMap((hint, index) => (matches(hint.written) ? [index] : []));
  if (found.length === 0) found = hints.flatMap((hint, index) => (matches(hint.bare) ? [index] : []));
  if (found.length > 1) return `Several columns are called "${key}" (${positions(found)}); state the position.`;
  const index = found[0] ?? (/^\d+$/.test(wanted) ? Number(wanted) - 1 : -1);
  if (index < 0 || index >= hints.length) {
    const names = hints.map((hint, position) => columnLabel(hint, position)).join(", ");
    return `There is no column "${key}"; the file has ${names}.`;
  }
  return columns[index] === undefined ? `Column ${columnLabel(hints[index]!, index)} holds text, not numbers.` : index;
}

/** "3 (Fz right)". */
export function columnLabel(hint: ColumnHint, index: number): string {
  return hint.written === "" ? `${index + 1}` : `${index + 1} (${hint.written})`;
}

/** A sentence names this many columns; of more it gives the number. No setting: it shortens a sentence. */
const mostNamed = 12;

/** "column 2 (Fz1), column 3 (Fz2)". */
export function columnLabels(found: readonly number[], hints: readonly ColumnHint[]): string {
  const named = found.slice(0, found.length > mostNamed ? mostNamed - 1 : mostNamed);
  const labels = named.map((index) => `column ${columnLabel(hints[index]!, index)}`).join(", ");
  return named.length < found.length ? `${labels} and ${found.length - named.length} more` : labels;
}

function positions(found: readonly number[]): string {
  return found.map((index) => index + 1).join(", ");
}
