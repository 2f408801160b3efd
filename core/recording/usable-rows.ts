import type { Table } from "../bytes/table.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import type { ColumnHint } from "./column-hint.ts";

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
    const places = inside.slice(0, placesNamed).map((cell) => {
      const name = hints[cell.column]?.written;
      const column = name === "" || name === undefined ? `column ${cell.column + 1}` : `column ${name}`;
      return `line ${cell.line}, ${column} (${cell.text === "" ? "empty" : `"${cell.text}"`})`;
    });
    const more = inside.length > placesNamed ? ` and ${inside.length - placesNamed} more` : "";
    const refusal = proseFinding(
      "cells-unreadable",
      "refusal",
      `Inside the recording no number stands in ${places.join("; ")}${more}.`,
      "Export the recording again; no value is put in the place of a missing one.",
      { where: `line ${inside[0]!.line}` },
    );
    return { start, end, findings: [refusal] };
  }
  const dropped = damaged.size;
  if (dropped === 0) return { start, end, findings: [] };
  const parts = [
    ...(start > 0 ? [`${rowCount(start)} at the start`] : []),
    ...(end < table.rows ? [`${rowCount(table.rows - end)} at the end`] : []),
  ];
  const warning = proseFinding(
    "cells-unreadable",
    "warning",
    `${parts.join(" and ")} without readable numbers (from line ${cells[0]!.line}) ${dropped === 1 ? "was" : "were"} left out.`,
    "Export the recording again if the missing part matters.",
    { where: `line ${cells[0]!.line}` },
  );
  return { start, end, findings: [warning] };
}

function rowCount(count: number): string {
  return count === 1 ? "1 row" : `${count} rows`;
}

function noNumbers(line: number): Finding {
  return proseFinding(
    "cells-unreadable",
    "refusal",
    "No row holds a number in every column that is needed.",
    "Export the recording again, or state other columns (--columns time=1,left=2,right=3).",
    { where: `line ${line}` },
  );
}
