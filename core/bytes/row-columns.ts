import type { Dialect } from "./dialect.ts";
import { lineEndFrom } from "./lines.ts";
import { parseMarkedNumber } from "./number-marks.ts";
import type { ClockColumn, TextColumn, UnreadableCell } from "./table.ts";
import { type TextBytes, textBetween } from "./text-bytes.ts";
import { ClockCells, TextCells } from "./text-column.ts";

/** A line of the body: its first byte, and its number from 1. */
export interface BodyLine {
  readonly start: number;
  readonly line: number;
}

/** How many row starts are remembered: the end of a text is looked at once more. No setting: it spares memory. */
const startsKept = 64;

/** Rows for which there is room at once; further room is made as they come. No setting: it spares memory. */
const roomBeyondEstimate = 1.02;

/** The columns of a body while it is read. */
export class RowColumns {
  /** Rows accepted so far. */
  count = 0;
  columns: (Float64Array | undefined)[];
  lineOfRow: Uint32Array;
  readonly unreadable: UnreadableCell[] = [];
  /** Where the cells of text and clocks of the row being read stand, by column. */
  readonly cells: { readonly starts: Float64Array; readonly ends: Float64Array };
  private readonly textCells: readonly (TextCells | undefined)[];
  private readonly clockCells: readonly (ClockCells | undefined)[];
  private readonly wordColumns: readonly number[];
  private readonly starts = new Float64Array(startsKept);
  private readonly text: TextBytes;
  private readonly dialect: Dialect;

  constructor(text: TextBytes, dialect: Dialect, bodyBytes: number) {
    this.text = text;
    this.dialect = dialect;
    const { kinds, columnCount } = dialect;
    // Every cell takes at least one byte and its delimiter or line end another.
    const most = bodyBytes / (2 * columnCount);
    const capacity = Math.ceil(Math.min(most, (roomBeyondEstimate * bodyBytes) / dialect.lineBytes)) + 16;
    this.columns = kinds.map((kind) => (kind === "text" ? undefined : new Float64Array(capacity)));
    this.lineOfRow = new Uint32Array(capacity);
    this.textCells = kinds.map((kind) => (kind === "text" ? new TextCells() : undefined));
    this.clockCells = kinds.map((kind) => (kind === "clock" ? new ClockCells() : undefined));
    this.wordColumns = kinds.flatMap((kind, column) => (kind === "number" ? [] : [column]));
    this.cells = { starts: new Float64Array(columnCount), ends: new Float64Array(columnCount) };
  }

  /** Makes room for one more row. */
  reserve(): void {
    const capacity = this.lineOfRow.length;
    if (this.count < capacity) return;
    const larger = Math.ceil(1.5 * capacity);
    this.columns = this.columns.map((column) => {
      if (column === undefined) return undefined;
      const copy = new Float64Array(larger);
      copy.set(column);
      return copy;
    });
    const lines = new Uint32Array(larger);
    lines.set(this.lineOfRow);
    this.lineOfRow = lines;
  }

  /** Counts the row that was read from bytes into the columns, and takes over its words. */
  acceptPlain(start: number, line: number): void {
    for (const column of this.wordColumns) {
      this.setWord(column, textBetween(this.text, this.cells.starts[column]!, this.cells.ends[column]!), line);
    }
    this.close(start, line);
  }

  /** Takes over a row from its cells. */
  accept(fields: readonly string[], { start, line }: BodyLine): void {
    const { marks, kinds } = this.dialect;
    for (const [position, kind] of kinds.entries()) {
      const field = fields[position]!;
      if (kind !== "number") this.setWord(position, field, line);
      else {
        const value = parseMarkedNumber(field, marks[position]!);
        this.columns[position]![this.count] = value;
        if (Number.isNaN(value)) this.addUnreadable(position, line, field);
      }
    }
    this.close(start, line);
  }

  private setWord(column: number, written: string, line: number): void {
    const cell = written.trim();
    this.textCells[column]?.set(this.count, cell);
    const clock = this.clockCells[column];
    if (clock === undefined) return;
    const seconds = clock.read(cell);
    this.columns[column]![this.count] = seconds;
    if (Number.isNaN(seconds)) this.addUnreadable(column, line, cell);
  }

  private addUnreadable(column: number, line: number, text: string): void {
    this.unreadable.push({ row: this.count, column, line, text: shortened(text) });
  }

  private close(start: number, line: number): void {
    this.starts[this.count % startsKept] = start;
    this.lineOfRow[this.count++] = line;
  }

  /** The text cell of a row, "" where the column is not text. */
  textCell(column: number, row: number): string {
    return this.textCells[column]?.cell(row) ?? "";
  }

  /** True when every column of numbers or clocks is without a value in this row. */
  isWithoutValues(row: number): boolean {
    return this.columns.every((column) => column === undefined || Number.isNaN(column[row]));
  }

  /** Where the last of the first `rows` rows start, in order. */
  lastStarts(rows: number): number[] {
    const first = Math.max(0, this.count - startsKept);
    return Array.from({ length: Math.max(0, rows - first) }, (_, index) => this.starts[(first + index) % startsKept]!);
  }

  /** Text of the line of one of the last rows; "" where it is too far back. */
  lineText(row: number): string {
    if (row < this.count - startsKept) return "";
    const start = this.starts[row % startsKept]!;
    return textBetween(this.text, start, lineEndFrom(this.text.bytes, start));
  }

  /** The first `rows` rows as they stand in a table. */
  finish(rows: number): {
    readonly columns: readonly (Float64Array | undefined)[];
    readonly clocks: readonly (ClockColumn | undefined)[];
    readonly texts: readonly (TextColumn | undefined)[];
    readonly lineOfRow: Uint32Array;
  } {
    const { kinds } = this.dialect;
    const values = this.columns.map((column) => column?.subarray(0, rows));
    return {
      columns: values.map((column, position) => (kinds[position] === "number" ? column : undefined)),
      clocks: this.clockCells.map((clock, position) => clock?.column(values[position]!)),
      texts: this.textCells.map((cells) => cells?.column(rows)),
      lineOfRow: this.lineOfRow.subarray(0, rows),
    };
  }
}

function shortened(cell: string): string {
  const trimmed = cell.trim();
  return trimmed.length > 20 ? `${trimmed.slice(0, 20)}…` : trimmed;
}
