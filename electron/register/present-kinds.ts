import type { Connection } from "./connection.ts";
import type { RecordKind } from "./record-schemas.ts";
import { recordKinds } from "./record-tables.ts";

/** The kinds a register of this or an earlier schema has tables for, parents first. */
export function presentKinds(connection: Connection): readonly RecordKind[] {
  return recordKinds.filter(
    (kind) => connection.one("SELECT name FROM sqlite_schema WHERE type = 'table' AND name = ?", kind) !== undefined,
  );
}
