import type { Table } from "../bytes/table.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { ColumnHint } from "./column-hint.ts";
import { namedColumn } from "./stated-columns.ts";

/** Rows `[start, end)` in which every used column holds a number. */
export interface UsableRows {
  readonly start: number;
  readonly end: number;
  readonly findings: readonly Finding[];
}

/** No setting: it shortens a sentence. */
const placesNamed = 3;

/**
 * Leaves out unreadable rows at either end and says so; one inside is a refusal, because no value may stand in for it.
 */
export function findUsableRows(table: Table, usedColumns: readonly number[], hints: readonly ColumnHint[]): UsableRows {
  const cells = table.unreadable.filter((cell) => usedColumns.includes(cell.column));
  const damaged = new Set(cells.map((cell) => cell.row));
  let start = 0;
  while (damaged.has(start)) start++;
  let end = table.rows;
  while (end > start && damaged.has(end - 1)) end--;
  if (end - start < 2) {
    return { start: 0, end: table.rows, findings: [noNumbers(cells[0]?.line ?? 1)] };
  }
  const inside = cells.filter((cell) => cell.row >= start && cell.row < end);
  if (inside.length > 0) {
    const named = inside.slice(0, placesNamed).map(({ line, column, text }) => {
      const hint = hints[column];
      return {
        line,
        column: hint === undefined ? { position: column + 1, name: "" } : namedColumn(hint, column),
        text,
      };
    });
    const refusal = finding(
      "cells-unreadable/inside",
      "refusal",
      { cells: named, count: inside.length },
      { place: { at: "line", line: inside[0]!.line } },
    );
    return { start, end, findings: [refusal] };
  }
  if (damaged.size === 0) return { start, end, findings: [] };
  const firstLine = cells[0]!.line;
  const warning = finding(
    "cells-unreadable/ends",
    "warning",
    { rowsAtStart: start, rowsAtEnd: table.rows - end, firstLine },
    { place: { at: "line", line: firstLine } },
  );
  return { start, end, findings: [warning] };
}

function noNumbers(line: number): Finding {
  return finding(
    "cells-unreadable/no-row",
    "refusal",
    {},
    { place: { at: "line", line }, answers: [{ asks: "columns" }] },
  );
}
