import { type Connection, numberOf, type Row, textOf } from "../connection.ts";
import { presentKinds } from "../present-kinds.ts";
import type { Contents } from "./contents.ts";
import type { ConversionPlace } from "./conversion-schema.ts";

/** A table whose fields are under the register's protection. */
interface FieldTable {
  readonly name: string;
  readonly key: readonly string[];
  readonly rewrite: (row: Row) => void;
}

function tablesOf({ store, journal }: Contents): readonly FieldTable[] {
  return [
    {
      name: "recordingBytes",
      key: ["recording"],
      rewrite: (row) => store.rewriteBytes(textOf(row, "recording")),
    },
    ...presentKinds(store.connection).map((kind) => ({
      name: kind,
      key: ["id"],
      rewrite: (row: Row) => store.rewrite(kind, textOf(row, "id")),
    })),
    {
      name: "journalContents",
      key: ["sequence", "part"],
      rewrite: (row) => journal.rewrite(numberOf(row, "sequence"), numberOf(row, "part")),
    },
  ];
}

export const firstPlace: ConversionPlace = { table: 0, after: [] };

/** How many fields there are to write again. */
export function countFields(contents: Contents): number {
  const counts = tablesOf(contents).map(({ name }) => {
    return numberOf(contents.store.connection.one(`SELECT count(*) AS rows FROM ${name}`) ?? {}, "rows");
  });
  return counts.reduce((sum, count) => sum + count, 0);
}

/**
 * Writes some fields again in the form in which they would be written now, within the caller's transaction. What is added
 * meanwhile is in that form already, wherever it comes to stand.
 * @returns where to go on, and how many were written; no place when it was the last of them
 */
export function rewriteSome(
  contents: Contents,
  place: ConversionPlace,
  most: number,
): { readonly place: ConversionPlace | undefined; readonly rewritten: number } {
  const tables = tablesOf(contents);
  let rewritten = 0;
  let { table, after } = place;
  while (table < tables.length) {
    const { name, key, rewrite } = tables[table] as FieldTable;
    for (const row of rowsAfter(contents.store.connection, name, key, after, most - rewritten)) {
      rewrite(row);
      rewritten += 1;
      after = key.map((column) => row[column] as string | number);
    }
    if (rewritten === most) return { place: { table, after }, rewritten };
    table += 1;
    after = [];
  }
  return { place: undefined, rewritten };
}

/** Writes every field again. */
export function rewriteAll(contents: Contents): void {
  rewriteSome(contents, firstPlace, Number.MAX_SAFE_INTEGER);
}

function rowsAfter(
  connection: Connection,
  table: string,
  key: readonly string[],
  after: readonly (string | number)[],
  most: number,
): readonly Row[] {
  const columns = key.join(", ");
  const later = after.length === 0 ? "" : `WHERE (${columns}) > (${key.map(() => "?").join(", ")})`;
  return connection.all(`SELECT ${columns} FROM ${table} ${later} ORDER BY ${columns} LIMIT ?`, ...after, most);
}
