import type { Dialect } from "./dialect.ts";
import type { NumericBody } from "./numeric-body.ts";
import { isOtherRow, isWords } from "./table-findings.ts";

/** How many lines of numbers stand above, among or behind the rows without being one of them. */
export function countDroppedRows(
  header: readonly string[],
  body: NumericBody,
  dialect: Dialect,
  isCut: boolean,
): number {
  const above = header.filter((line) => isOtherRow(line, dialect)).length;
  const odd = body.oddLines.filter(
    (line) => line.numberCount > 0 && (line.rowsBefore < body.rows || !isWords(line)),
  ).length;
  return above + odd + (isCut ? 1 : 0);
}
