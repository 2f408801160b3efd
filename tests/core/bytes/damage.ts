import fc from "fast-check";
import type { TableOutcome } from "../../../core/bytes/read-table.ts";
import type { Table } from "../../../core/bytes/table.ts";
import { type GoodTable, goodTables } from "./good-tables.ts";

const piece = fc.constantFrom(
  ..."0123456789.,;|\t \n\r\"'#%/-+eEn()[]:=\u00a0".split(""),
  "left (N)",
  "time (s)",
  "Samples: 3\n",
  "NaN",
  "Mean",
  "\r\n",
  "0.001",
  "1.234",
  "1,234.5",
  "1e5",
  "10:15:03.125",
  "2026-02-03T10:15:03",
  "true",
  "é",
);

/** One wound of a file: a flipped bit, a lost, doubled or foreign stretch. */
const wound = fc.record({
  kind: fc.constantFrom("flip", "lose", "double", "insert", "cut"),
  place: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }),
  length: fc.nat({ max: 40 }),
  bytes: fc.uint8Array({ minLength: 1, maxLength: 6 }),
});

function wounded(
  bytes: Uint8Array,
  wounds: readonly (typeof wound extends fc.Arbitrary<infer W> ? W : never)[],
): Uint8Array {
  let damaged = bytes.slice();
  for (const { kind, place, length, bytes: foreign } of wounds) {
    const at = Math.floor(place * damaged.length);
    const [before, stretch, behind] = [
      damaged.slice(0, at),
      damaged.slice(at, at + length),
      damaged.slice(at + length),
    ];
    if (kind === "flip" && damaged.length > 0) damaged[at] = damaged[at]! ^ (1 << (foreign[0]! % 8));
    else if (kind === "lose") damaged = Uint8Array.of(...before, ...behind);
    else if (kind === "double") damaged = Uint8Array.of(...before, ...stretch, ...stretch, ...behind);
    else if (kind === "insert") damaged = Uint8Array.of(...before, ...foreign, ...stretch, ...behind);
    else if (kind === "cut") damaged = place > 0.5 ? before : damaged;
  }
  return damaged;
}

/** Any bytes, any text made of what tables are made of, and wounded good tables. */
export const anyInput: fc.Arbitrary<Uint8Array> = fc.oneof(
  { weight: 1, arbitrary: fc.uint8Array({ maxLength: 600 }) },
  {
    weight: 3,
    arbitrary: fc.array(piece, { maxLength: 120 }).map((parts) => new TextEncoder().encode(parts.join(""))),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(fc.constantFrom(...goodTables), fc.array(wound, { minLength: 1, maxLength: 5 }))
      .map(([{ bytes }, wounds]) => wounded(bytes, wounds)),
  },
);

/** True when a reading says that something is wrong: a finding, or a cell named as unreadable. */
export function isFound(whole: TableOutcome, damaged: TableOutcome): boolean {
  return damaged.findings.length > whole.findings.length || (damaged.table?.unreadable.length ?? 0) > 0;
}

/** True when both tables say the same about the rows, but for the value of at most one cell. */
export function differInOneCellAtMost(whole: Table, other: Table): boolean {
  const writtenAs = ({ dialect, rows, names }: Table, columns: number): string =>
    JSON.stringify([
      dialect.delimiter,
      dialect.decimalMark,
      dialect.thousandsMark,
      dialect.kinds.slice(0, columns),
      rows,
      names.length >= columns,
    ]);
  // A delimiter behind the last column may be taken for one more, empty column.
  if (writtenAs(whole, whole.names.length) !== writtenAs(other, whole.names.length)) return false;
  let different = 0;
  for (const column of whole.names.keys()) {
    const [cells, others] = [cellsOf(whole, column), cellsOf(other, column)];
    for (let row = 0; row < whole.rows; row++) if (!Object.is(cells(row), others(row))) different++;
  }
  return different <= 1;
}

function cellsOf(table: Table, column: number): (row: number) => number | string {
  const numbers = table.columns[column] ?? table.clocks[column]?.seconds;
  const words = table.texts[column];
  return (row) => numbers?.[row] ?? words?.values[words.valueOfRow[row]!] ?? "";
}

/**
 * True when the cut leaves whole rows only (behind a line end, or behind the last character of a line) and the file does
 * not say that there should be more of them.
 */
export function leavesWhole({ name, bytes, statesCount }: GoodTable, length: number): boolean {
  const isEnd = (byte: number | undefined): boolean => byte === 10 || byte === 13;
  const unitBytes = name.startsWith("UTF-16") ? 2 : 1;
  if (statesCount) return length === bytes.length - unitBytes;
  const low = name.includes("big") ? unitBytes - 1 : 0;
  return length % unitBytes === 0 && (isEnd(bytes[length - unitBytes + low]) || isEnd(bytes[length + low]));
}
