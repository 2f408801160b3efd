import { RequestRefused } from "../request-refused.ts";
import { removeAthleteLines } from "./athlete-lines.ts";
import { Connection } from "./connection.ts";
import { finishCleaning, rewriteBackup } from "./erase-for-good.ts";
import { presentKinds } from "./erase-records.ts";
import { encryptedFields, type FieldProtection, plainFields } from "./field-protection.ts";
import type { Journal } from "./journal.ts";
import { newDataKey, unwrapKey, type WrappedKey, wrapKey } from "./passphrase-key.ts";
import type { RecordStore } from "./record-store.ts";
import type { Register } from "./register.ts";
import { readFact, removeFact, writeFact } from "./register-facts.ts";
import { keptBackups } from "./register-folder.ts";

/** A passphrase shorter than this is guessed too soon. */
const fewestLetters = 8;

/**
 * Puts the register and the backups it keeps under a passphrase: every personal field and every recording is written
 * again, encrypted, and what lay there before is taken out of free pages and the write-ahead log. Where the register
 * is under a passphrase already, only the new one opens it afterwards.
 */
export function setPassphrase(register: Register, passphrase: Uint8Array): void {
  register.requireWritable();
  if (letters(passphrase) < fewestLetters) {
    throw new RequestRefused(`A passphrase needs at least ${fewestLetters} letters; nothing was changed.`);
  }
  const { dataKey } = register;
  if (dataKey === undefined) {
    const fresh = newDataKey();
    protectUnder(register, fresh, wrapKey(fresh, passphrase), passphrase);
    return;
  }
  // The data key stays, so only its wrapping is written again.
  const wrapped = wrapKey(dataKey, passphrase);
  for (const path of keptBackups(register.file)) {
    rewriteBackup(path, register.contents.store.protection, ({ connection }) => {
      if (readFact(connection, "protection") !== undefined) writeFact(connection, "protection", wrapped);
    });
  }
  const { store, journal } = register.contents;
  store.connection.transaction(() => {
    writeFact(store.connection, "protection", wrapped);
    journalChange(register, journal);
  });
  finishCleaning(store.connection);
}

/** Of UTF-8: every byte but those that continue a letter. */
function letters(passphrase: Uint8Array): number {
  return passphrase.filter((byte) => (byte & 0xc0) !== 0x80).byteLength;
}

/** Takes the passphrase away from the register and the backups it keeps. */
export function removePassphrase(register: Register): void {
  register.requireWritable();
  if (!register.encrypted) throw new RequestRefused("The register has no passphrase.");
  protectUnder(register, undefined, undefined, undefined);
}

function protectUnder(
  register: Register,
  dataKey: Uint8Array | undefined,
  wrapped: WrappedKey | undefined,
  passphrase: Uint8Array | undefined,
): void {
  const { store, journal } = register.contents;
  const protection = dataKey === undefined ? plainFields : encryptedFields(dataKey);
  // Backups first: broken off in between, nothing is left in the clear that the person believes encrypted.
  const backups = keptBackups(register.file).map((path) => [path, protectionIn(path, register, passphrase)] as const);
  for (const [path, found] of backups)
    rewriteBackup(path, found, (kept, its) => rewrite(kept, its, protection, wrapped));
  store.connection.transaction(() => {
    journalChange(register, journal);
    rewrite(store, journal, protection, wrapped);
  });
  register.continueUnder(dataKey);
  finishCleaning(store.connection);
}

function rewrite(
  store: RecordStore,
  journal: Journal,
  protection: FieldProtection,
  wrapped: WrappedKey | undefined,
): void {
  store.rewriteUnder(protection, presentKinds(store));
  journal.rewriteUnder(protection);
  removeAthleteLines(store.connection);
  if (wrapped === undefined) removeFact(store.connection, "protection");
  else writeFact(store.connection, "protection", wrapped);
}

/**
 * How a backup is protected now. After an attempt that was broken off it may be under this very passphrase already,
 * with a data key of its own.
 */
function protectionIn(path: string, register: Register, passphrase: Uint8Array | undefined): FieldProtection {
  const backup = new Connection(path, { readOnly: true });
  try {
    const wrapped = readFact(backup, "protection");
    if (wrapped === undefined) return plainFields;
    if (register.dataKey !== undefined) return register.contents.store.protection;
    const dataKey = passphrase === undefined ? undefined : unwrapKey(wrapped, passphrase);
    if (dataKey !== undefined) return encryptedFields(dataKey);
    throw new RequestRefused(
      `The backup ${path} is under another passphrase: move it elsewhere first. Nothing was changed.`,
    );
  } finally {
    backup.close();
  }
}

function journalChange(register: Register, journal: Journal): void {
  const { who, now } = register.circumstances;
  // Broken off before the file was cleaned, that is done when it is next opened.
  writeFact(register.connection, "unfinishedCleaning", { since: now().toISOString() });
  journal.append(now(), { action: "passphrase changed", who }, []);
}
