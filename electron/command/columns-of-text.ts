/** Rows as aligned text: the first column to the left, the others to the right, two spaces between. */
export function columnsOfText(rows: readonly (readonly string[])[], indent: string): string {
  const widths: number[] = [];
  for (const row of rows) {
    for (const [column, cell] of row.entries()) widths[column] = Math.max(widths[column] ?? 0, widthOf(cell));
  }
  return rows
    .map((row) =>
      row
        .map((cell, column) => {
          const gap = " ".repeat((widths[column] ?? 0) - widthOf(cell));
          return column === 0 ? cell + gap : gap + cell;
        })
        .join("  ")
        .trimEnd(),
    )
    .map((line) => indent + line)
    .join("\n");
}

function widthOf(text: string): number {
  return [...text].length;
}
