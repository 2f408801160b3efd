import type { TableReading } from "./request.ts";

/** What a line of a delimited file was read as. `said`: it tells something about the recording. */
export type LineKind = "header" | "said" | "names" | "units" | "row";

/** What one line was read as. @param number of the line, from 1 */
export function lineKind(line: string, number: number, { headerLines, hints, columns }: TableReading): LineKind {
  if (number > headerLines) return "row";
  if (hints.some((hint) => hint.line === number)) return "said";
  const names = columns.flatMap(({ name }) => (name.trim() === "" ? [] : [name.trim()]));
  if (names.length > 0 && holdsAll(line, names)) return "names";
  const units = columns.flatMap(({ unit }) => (unit.trim() === "" ? [] : [unit.trim()]));
  return units.length > 0 && number > 1 && holdsAll(line, units) ? "units" : "header";
}

function holdsAll(line: string, words: readonly string[]): boolean {
  return words.every((word) => line.includes(word));
}
