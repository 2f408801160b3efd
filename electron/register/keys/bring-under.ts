import { removeAthleteLines } from "../athlete-lines.ts";
import type { Connection } from "../connection.ts";
import { migrate } from "../migrations.ts";
import type { WrappedKey } from "../passphrase-key.ts";
import { readFact, registerId, removeFact, writeFact } from "../register-facts.ts";
import { ContentKeys, hasContentKeys } from "./content-keys.ts";
import { contentsUnder } from "./contents.ts";
import {
  directFields,
  type FieldProtection,
  layeredFields,
  plainFields,
  takingOut,
  unlayeringFields,
} from "./field-protection.ts";
import { makeJournalKey, readJournalKey, sealHead, wrapJournalKey } from "./journal-key.ts";
import { rewriteAll } from "./rewrite-fields.ts";

/** What a register or a copy is to be under. */
export interface Protection {
  readonly dataKey: Uint8Array;
  /** The data key as it lies in the file. */
  readonly wrapped: WrappedKey;
}

/**
 * Puts a whole copy under another protection, in one transaction; what it says stays the same. Where both are layers only
 * keys are wrapped again, else every field is written again and the copy is brought to today's schema first.
 * @param own the copy's own data key; undefined where it is under no passphrase
 * @param target undefined for none
 */
export function bringUnder(connection: Connection, own: Uint8Array | undefined, target: Protection | undefined): void {
  if (own === undefined && target === undefined) return;
  migrate(connection);
  connection.transaction(() => {
    // They speak of the keys and the copies of a register, not of what this copy holds.
    for (const fact of ["formerKeys", "backupsBehind", "dataKeyDue", "clearKeys", "checkedBackups"] as const)
      removeFact(connection, fact);
    if (own !== undefined && target !== undefined && hasContentKeys(connection)) return rewrap(connection, own, target);
    rewrite(connection, own, target);
  });
}

/** Only the copy's keys are written again. */
export function needsRewrapOnly(connection: Connection, own: Uint8Array | undefined, target: Protection | undefined) {
  return own !== undefined && target !== undefined && hasContentKeys(connection);
}

/** Wraps content keys and journal key by another data key, within the caller's transaction. */
export function rewrap(connection: Connection, own: Uint8Array, { dataKey, wrapped }: Protection): void {
  const id = registerId(connection);
  const keys = new ContentKeys(connection, id, own);
  keys.rewrapUnder(dataKey);
  keys.forget();
  const journalKey = readJournalKey(connection, id, own);
  // One that cannot be unwrapped was altered; it stays, and verifying tells of it.
  if (journalKey !== undefined) wrapJournalKey(connection, id, journalKey, dataKey);
  journalKey?.fill(0);
  writeFact(connection, "protection", wrapped);
}

function rewrite(connection: Connection, own: Uint8Array | undefined, target: Protection | undefined): void {
  const id = registerId(connection);
  const protection = between(connection, id, own, target?.dataKey);
  removeAthleteLines(connection);
  rewriteAll(contentsUnder(connection, id, protection, undefined));
  if (target === undefined) {
    leavePassphrase(connection);
    connection.execute("DELETE FROM contentKeys");
  } else enterPassphrase(connection, target);
  protection.forget();
}

/** The facts of a register that a passphrase protects from now on, within the caller's transaction. */
export function enterPassphrase(connection: Connection, { dataKey, wrapped }: Protection): void {
  const id = registerId(connection);
  writeFact(connection, "protection", wrapped);
  const journalKey = makeJournalKey(connection, id, dataKey);
  sealHead(connection, id, journalKey);
  journalKey.fill(0);
}

/** The facts of one that no passphrase protects any more, within the caller's transaction. */
export function leavePassphrase(connection: Connection): void {
  removeFact(connection, "protection");
  removeFact(connection, "journalKey");
  sealHead(connection, registerId(connection), undefined);
}

/** Reads what a copy is under, and writes what it comes under. */
function between(
  connection: Connection,
  id: string,
  own: Uint8Array | undefined,
  target: Uint8Array | undefined,
): FieldProtection {
  if (target !== undefined) {
    return layeredFields(new ContentKeys(connection, id, target), own === undefined ? plainFields : directFields(own));
  }
  // Without its own key a copy under no passphrase comes under none: then nothing is to be done.
  if (own === undefined) return plainFields;
  return hasContentKeys(connection)
    ? unlayeringFields(new ContentKeys(connection, id, own))
    : takingOut(directFields(own));
}

/** The protection that a register's facts tell of; undefined where there is none. */
export function protectionIn(connection: Connection, dataKey: Uint8Array | undefined): Protection | undefined {
  const wrapped = readFact(connection, "protection");
  return wrapped === undefined || dataKey === undefined ? undefined : { dataKey, wrapped };
}
