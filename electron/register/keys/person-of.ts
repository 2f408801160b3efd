import type { Connection, Row } from "../connection.ts";
import type { RecordKind } from "../record-schemas.ts";
import { type References, referenceNames } from "../record-tables.ts";
import { nobody } from "./content-keys.ts";

/**
 * Whose record it is: the athlete's that it hangs on, however many records lie between.
 * @param references undefined for what the stored row says
 * @returns the athlete's identifier; `nobody` for what belongs to nobody
 */
export function personOf(
  connection: Connection,
  kind: RecordKind,
  id: string,
  references: References | undefined,
): string {
  if (kind === "athletes") return id;
  const names = referenceNames(kind);
  const from = references ?? (names.length > 0 ? storedReferences(connection, kind, id, names.join(", ")) : {});
  if (from.athlete) return from.athlete;
  if (from.recording) return personOf(connection, "recordings", from.recording, undefined);
  if (from.session) return personOf(connection, "sessions", from.session, undefined);
  return nobody;
}

function storedReferences(connection: Connection, kind: RecordKind, id: string, columns: string): References {
  const row: Row = connection.one(`SELECT ${columns} FROM ${kind} WHERE id = ?`, id) ?? {};
  return row as References;
}
