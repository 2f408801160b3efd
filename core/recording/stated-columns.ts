import { type Finding, finding } from "../ground/finding.ts";
import type { NamedColumn } from "../ground/findings/file-parts.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnKey } from "./column-key.ts";

type Columns = readonly (Float64Array | undefined)[];

/** What a person writes in place of a column where a file's time column is not to be used. */
export const noColumn = "none";

/**
 * Indices of the columns a key means, or the finding that says why there are none. A key is a position from 1, a name
 * with or without its unit, or several of them joined by plus signs ("2+3"), which are added.
 */
export function findColumns(
  key: ColumnKey,
  hints: readonly ColumnHint[],
  columns: Columns,
): readonly number[] | Finding {
  const whole = findColumn(key, hints, columns);
  const parts = String(key).split("+");
  if (typeof whole === "number") return [whole];
  if (parts.length < 2) return whole;
  const found: number[] = [];
  for (const part of parts) {
    const index = findColumn(part.trim(), hints, columns);
    if (typeof index !== "number") return index;
    if (found.includes(index)) return statedTwice(index);
    found.push(index);
  }
  return found;
}

function findColumn(key: ColumnKey, hints: readonly ColumnHint[], columns: Columns): number | Finding {
  const wanted = String(key).trim().toLowerCase();
  const matches = (name: string): boolean => typeof key === "string" && name.toLowerCase() === wanted;
  let found = hints.flatMap((hint, index) => (matches(hint.written) ? [index] : []));
  if (found.length === 0) found = hints.flatMap((hint, index) => (matches(hint.bare) ? [index] : []));
  if (found.length > 1) {
    const positions = found.map((index) => index + 1);
    return finding("columns-unclear/name-twice", "refusal", { key: String(key), positions }, asked);
  }
  const index = found[0] ?? (/^\d+$/.test(wanted) ? Number(wanted) - 1 : -1);
  if (index < 0 || index >= hints.length) {
    const figures = { key: String(key), columns: hints.map(namedColumn) };
    return finding("columns-unclear/no-such-column", "refusal", figures, asked);
  }
  if (columns[index] !== undefined) return index;
  return finding("columns-unclear/text", "refusal", { column: namedColumn(hints[index]!, index) }, asked);
}

const asked = { answers: [{ asks: "columns" }] } as const;

/** Refuses a column that was given two parts. */
export function statedTwice(index: number): Finding {
  return finding("columns-unclear/stated-twice", "refusal", { position: index + 1 }, asked);
}

/** A column as findings name it. */
export function namedColumn(hint: ColumnHint, index: number): NamedColumn {
  return { position: index + 1, name: hint.written };
}

/** Columns as findings name them. */
export function namedColumns(found: readonly number[], hints: readonly ColumnHint[]): readonly NamedColumn[] {
  return found.map((index) => namedColumn(hints[index]!, index));
}
