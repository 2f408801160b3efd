import type { Dialect } from "./dialect.ts";
import { isMissing } from "./number-text.ts";
import type { RowColumns } from "./row-columns.ts";
import type { UnreadableCell } from "./table.ts";

/** A line behind the last sample, as written. */
export interface EndLine {
  /** From 1. */
  readonly line: number;
  readonly text: string;
}

/** Where the samples end, and what stands behind them in the shape of rows. */
export interface BodyEnd {
  readonly rows: number;
  /** Cells of these rows only. */
  readonly unreadable: readonly UnreadableCell[];
  /** Lines with text in every number's place. */
  readonly footerLines: readonly EndLine[];
  /** Lines that sum the samples up, such as "Mean;812,3;790,1". */
  readonly summaryLines: readonly (EndLine & { readonly label: string })[];
}

/** Letters and what joins them, no digit: a word someone wrote, not a damaged number. */
const label = /^\p{L}[\p{L}\s.:()\u2026-]+$/u;

// English, German, French, Spanish; lower case, without accents.
const summaryWords = new Set(
  (
    "mean average avg median sd std stdev min max minimum maximum sum total count mittel mittelwert median summe anzahl " +
    "standardabweichung moyenne somme mediane media promedio suma mediana ecart-type desviacion"
  ).split(" "),
);

/** Takes footers and summaries off the end of the rows. */
export function trimEnd(body: RowColumns, dialect: Dialect): BodyEnd {
  const unreadable = [...body.unreadable];
  const footerLines: EndLine[] = [];
  const summaryLines: (EndLine & { readonly label: string })[] = [];
  let rows = body.count;
  while (rows > 0) {
    const row = rows - 1;
    const firstOfRow = unreadable.findLastIndex((cell) => cell.row !== row) + 1;
    const cells = unreadable.slice(firstOfRow);
    const endLine: EndLine = { line: body.lineOfRow[row]!, text: body.lineText(row) };
    if (body.isWithoutValues(row)) {
      if (cells.some((cell) => cell.text !== "") || endLine.text !== "") footerLines.push(endLine);
    } else {
      const found = summaryLabel(body, row, cells, dialect);
      if (found === undefined) break;
      summaryLines.push({ ...endLine, label: found });
    }
    unreadable.length = firstOfRow;
    rows = row;
  }
  return { rows, unreadable, footerLines: footerLines.reverse(), summaryLines: summaryLines.reverse() };
}

/** The word that makes a row a summary: in place of its first number, or a known one in a column of text. */
function summaryLabel(
  body: RowColumns,
  row: number,
  cells: readonly UnreadableCell[],
  dialect: Dialect,
): string | undefined {
  const firstValue = dialect.kinds.findIndex((kind) => kind !== "text");
  const word = cells.find((cell) => !isMissing(cell.text));
  if (word?.column === firstValue && label.test(word.text)) return word.text;
  for (const [column, kind] of dialect.kinds.entries()) {
    if (kind !== "text") continue;
    const cell = body.textCell(column, row);
    if (summaryWords.has(plainWord(cell)) && row > 0 && body.textCell(column, row - 1) !== cell) return cell;
  }
  return undefined;
}

function plainWord(cell: string): string {
  return cell
    .normalize("NFD")
    .replace(/[\p{M}.:]/gu, "")
    .trim()
    .toLowerCase();
}
