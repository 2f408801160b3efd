import { type Finding, finding } from "../ground/finding.ts";
import type { Dialect } from "./dialect.ts";
import type { Header } from "./header.ts";

/** No setting: it spares time; more rows would say the same. */
const rowsLookedAt = 100;

/**
 * `0,001,300,25` under two names: a comma that separates the columns and starts the decimals as well, so that a number
 * falls apart into two whole ones. Nothing in the row says which commas belong together.
 */
export function commaTwice(
  dialect: Dialect,
  misfit: Header["misfit"],
  columns: readonly (Float64Array | undefined)[],
): Finding[] {
  if (misfit === undefined || dialect.delimiter !== "comma" || dialect.marks.some(({ decimal }) => decimal !== "point"))
    return [];
  if (dialect.columnCount <= misfit.count || dialect.columnCount > 2 * misfit.count) return [];
  const areWhole = columns.every((column) => column?.subarray(0, rowsLookedAt).every(Number.isInteger) ?? false);
  if (!areWhole) return [];
  return [
    finding(
      "decimal-mark-unclear/comma-twice",
      "refusal",
      { line: misfit.line, nameCount: misfit.count, columnCount: dialect.columnCount },
      { place: { at: "line", line: misfit.line } },
    ),
  ];
}
