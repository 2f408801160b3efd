import type { Dialect } from "./dialect.ts";

/**
 * Column names over two lines: a row of plates above a row of channels, where a plate's name stands once above its
 * channels or above each of them. Undefined where the upper line is something else.
 */
export function joinNameRows(
  upper: readonly string[],
  lower: readonly string[],
  dialect: Dialect,
): string[] | undefined {
  const filled = upper.flatMap((cell, column) => (cell === "" ? [] : [column]));
  const isRepeated = hasDuplicates(lower.slice(0, dialect.columnCount));
  // A title, or a fact that a spreadsheet padded with empty cells, stands in the first cells alone.
  const isFact = dialect.columnCount > 2 && filled.length <= 2 && filled.every((column) => column < 2);
  if (isFact && !(isRepeated && filled.length === 1 && filled[0] === 1)) return undefined;
  const isAboveSome = upper[0] === "" && dialect.delimiter !== "spaces";
  const repeatsItself = upper.some((cell, column) => cell !== "" && cell === upper[column + 1]);
  if (!isRepeated && !isAboveSome && !repeatsItself) return undefined;
  let plate = "";
  return upper.map((cell, column) => {
    if (cell !== "") plate = cell;
    const name = lower[column] ?? "";
    // An empty column between two plates belongs to neither.
    return cell === "" && name === "" ? "" : `${plate} ${name}`.trim();
  });
}

function hasDuplicates(names: readonly string[]): boolean {
  const filled = names.filter((name) => name !== "");
  return new Set(filled).size < filled.length;
}
