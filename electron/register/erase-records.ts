import { removeAthleteLines } from "./athlete-lines.ts";
import { textOf } from "./connection.ts";
import type { Journal, JournalChange } from "./journal.ts";
import { contentKeyIds, destroyContentKeys } from "./keys/content-keys.ts";
import { presentKinds } from "./present-kinds.ts";
import type { RecordStore } from "./record-store.ts";
import { type RecordKey, referenceKinds, referenceNames } from "./record-tables.ts";
import { actorOf, type Circumstances } from "./register-writes.ts";

/** The records that go with some others: everything that points at them, and at those, and so on. */
export function withDependents(store: RecordStore, roots: readonly RecordKey[]): readonly RecordKey[] {
  // Names alone: what is listed here goes into the journal.
  const found = new Map(roots.map(({ kind, id }) => [`${kind} ${id}`, { kind, id }]));
  // Parents stand before children in the list of kinds, so that one walk finds all.
  for (const kind of presentKinds(store.connection)) {
    for (const name of referenceNames(kind)) {
      // A protocol is the clinic's own: sessions only follow it.
      if (name === "protocol") continue;
      for (const parent of [...found.values()].filter((each) => each.kind === referenceKinds[name])) {
        for (const row of store.connection.all(`SELECT id FROM ${kind} WHERE ${name} = ?`, parent.id)) {
          const key = { kind, id: textOf(row, "id") };
          found.set(`${kind} ${key.id}`, key);
        }
      }
    }
  }
  return [...found.values()];
}

/**
 * Removes records and all that depends on them, their bytes, and what the journal says of them, within the caller's
 * transaction. The journal keeps that something was erased: which random identifiers, when and by whom.
 */
export function eraseRecords(
  store: RecordStore,
  journal: Journal,
  roots: readonly RecordKey[],
  circumstances: Circumstances,
): void {
  const { connection } = store;
  const erased = withDependents(store, roots);
  const athletes = new Set(erased.filter(({ kind }) => kind === "athletes").map(({ id }) => id));
  // Sessions that once belonged to an erased athlete, and were given to another, may name that athlete in their past.
  const pointsAtErased = ({ before, after }: JournalChange) =>
    [before, after].some((state) => state?.references.athlete !== undefined && athletes.has(state.references.athlete));
  const keyIds = contentKeyIds(connection, athletes);
  const ids = new Set(erased.map(({ id }) => id));
  const emptied = [
    ...journal.readChangesOf(pointsAtErased).map(({ sequence, part }) => ({ sequence, part })),
    // What was written while it was theirs; nobody could read it without their key.
    ...journal.partsUnder(keyIds, ids),
  ];
  for (const { sequence, part } of emptied) journal.emptyContent(sequence, part);
  journal.emptyContentsOf(erased);
  connection.execute("PRAGMA defer_foreign_keys = ON");
  removeAthleteLines(connection);
  for (const { kind, id } of erased.toReversed()) {
    if (kind === "recordings") connection.run("DELETE FROM recordingBytes WHERE recording = ?", id);
    connection.run(`DELETE FROM ${kind} WHERE id = ?`, id);
  }
  // What is someone else's must not go with the key, wherever it came from.
  for (const { kind, id } of store.recordsUnder(keyIds)) store.rewrite(kind, id);
  for (const recording of store.bytesUnder(keyIds)) store.rewriteBytes(recording);
  destroyContentKeys(connection, athletes);
  journal.append(circumstances.now(), { action: "erased", ...actorOf(circumstances), erased, emptied }, []);
}
