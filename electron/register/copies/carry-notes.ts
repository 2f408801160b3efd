import { ChangeSet } from "../change-set.ts";
import type { Connection } from "../connection.ts";
import { contentsOf } from "../keys/contents.ts";
import type { StoredRecord } from "../record-tables.ts";
import type { Register } from "../register.ts";
import { actorOf, type Circumstances } from "../register-writes.ts";

/** What is noted of copies elsewhere, those in the bin included; nothing while it cannot be read. */
export function notesToCarry(register: Register): readonly StoredRecord<"copies">[] {
  return register.locked ? [] : [...register.contents.store.readSound("copies", () => undefined)];
}

/**
 * Writes them into a backup that is to take the register's place: where copies lie stays true whatever is gone back to.
 * @param dataKey undefined where no passphrase protects the backup
 */
export function carryNotes(
  backup: Connection,
  dataKey: Uint8Array | undefined,
  notes: readonly StoredRecord<"copies">[],
  circumstances: Circumstances,
): void {
  const { store, journal, protection } = contentsOf(backup, dataKey);
  try {
    backup.transaction(() => {
      const changes = new ChangeSet(store);
      for (const { id, kind, references, binned, content } of notes) {
        const known = store.read(kind, id);
        if (known === undefined && binned) continue;
        const athlete = references.athlete !== undefined && store.read("athletes", references.athlete)?.id;
        changes.write({ kind, id }, { references: athlete ? { athlete } : {}, binned, content });
      }
      if (changes.changes.length === 0) return;
      const title = { action: "copy made elsewhere", ...actorOf(circumstances) } as const;
      journal.append(circumstances.now(), title, changes.changes);
    });
  } finally {
    protection.forget();
  }
}
