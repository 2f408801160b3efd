import { RequestRefused } from "../refusals/request-refused.ts";
import { previewOf, withBackup } from "./backups.ts";
import { Connection, settle } from "./connection.ts";
import { carryNotes, notesToCarry } from "./copies/carry-notes.ts";
import { copyDatabase, copyInto } from "./copy-database.ts";
import { bringBackupsUnder, ownKeyOf } from "./kept-backups.ts";
import { bringUnder, type Protection, protectionIn } from "./keys/bring-under.ts";
import { contentsOf } from "./keys/contents.ts";
import { awaitPassphrase, changeDataKey } from "./keys/conversion.ts";
import { newKey } from "./keys/encryption.ts";
import { migrate } from "./migrations.ts";
import { unwrapKey, wrapKey } from "./passphrase-key.ts";
import type { Register } from "./register.ts";
import { readFact, removeFact, writeFact } from "./register-facts.ts";
import { backupPath } from "./register-folder.ts";
import type { BackupPreview } from "./register-views.ts";
import { actorOf } from "./register-writes.ts";
import { restoredWords } from "./restored-words.ts";
import { reached } from "./steps.ts";
import { bringBackups, convertToEnd, finishWhatWasBrokenOff, keysOfCopies } from "./unfinished.ts";
import { verifyRegister } from "./verify-register.ts";
import { workingCopyOf } from "./working-copy.ts";

/** The passphrases a backup may need: of the sealed file, and of the register inside where it is not today's. */
export interface BackupPassphrases {
  readonly file?: Uint8Array;
  readonly register?: Uint8Array;
}

/** What a backup holds, and what will protect it, before anything is replaced by it. */
export function previewBackup(
  register: Register,
  path: string,
  passphrases: BackupPassphrases,
): Promise<BackupPreview> {
  return withBackup(path, passphrases.file, register.file, (backup) => ({
    ...previewOf(backup),
    ...afterwards(register, backup),
  }));
}

/** A register under a passphrase stays under it; one without takes over the backup's. */
function afterwards(register: Register, backup: Connection): Afterwards {
  const isEncrypted = readFact(backup, "protection") !== undefined;
  const protection = register.encrypted ? "the register's" : isEncrypted ? "the backup's" : "none";
  const isKnown = !isEncrypted || (!register.locked && isOwnKeyKnown(register, backup));
  return {
    afterwards: protection,
    needsPassphrase: !isKnown,
    protectionSentence: restoredWords(isEncrypted, protection),
  };
}

type Afterwards = Pick<BackupPreview, "afterwards" | "needsPassphrase" | "protectionSentence">;

function isOwnKeyKnown(register: Register, backup: Connection): boolean {
  try {
    ownKeyOf(backup, keysOfCopies(register));
    return register.encrypted;
  } catch (error) {
    if (error instanceof RequestRefused) return false;
    throw error;
  }
}

/**
 * Puts a backup in the place of the register's content, after the backup was checked to the last byte and a copy of
 * today's content was made beside it. What protects the register stays; one without a passphrase takes over the
 * backup's, and its kept backups come under it first.
 * @throws RequestRefused when the backup cannot be used; the register is then as it was
 */
export async function restoreBackup(register: Register, path: string, passphrases: BackupPassphrases): Promise<void> {
  register.requireWritable();
  // Without its key nothing could come under its protection.
  if (register.locked) throw new RequestRefused("The register is locked: give its passphrase to restore a backup.");
  convertToEnd(register);
  const { copy, opened } = await withBackup(path, passphrases.file, register.file, (backup) => {
    const found = openedWith(backup, register, passphrases);
    checkContents(backup, found.key);
    return { copy: workingCopyOf(backup), opened: found };
  });
  try {
    const own = protectionIn(register.connection, register.dataKey);
    const taken = own === undefined ? freshProtection(opened) : undefined;
    prepare(copy, opened.key, own ?? taken, register);
    reached("restoration prepared");
    const { now } = register.circumstances;
    await copyDatabase(register.connection, backupPath(register.file, "before-restoring", now()));
    reached("copy made");
    if (taken !== undefined) {
      protectKeptBackups(register, taken);
      copy.transaction(() => awaitPassphrase(copy, taken));
    }
    await replaceContent(register, copy);
  } finally {
    copy.close();
  }
  noteRestored(register);
  if (opened.passphrase !== undefined && register.conversion !== undefined) takeOver(register, opened.passphrase);
  bringBackups(register);
  finishWhatWasBrokenOff(register);
}

function noteRestored(register: Register): void {
  const { circumstances } = register;
  const { store, journal } = register.contents;
  const title = { action: "restored from a backup", ...actorOf(circumstances) } as const;
  store.connection.transaction(() => journal.append(circumstances.now(), title, []));
}

/** The backup's passphrase becomes the register's, as if it had just been set: its data key lay in the clear until now. */
function takeOver(register: Register, passphrase: Uint8Array): void {
  convertToEnd(register);
  const { dataKey, contents, circumstances } = register;
  if (dataKey === undefined) throw new Error("A conversion has ended without a key.");
  register.continueUnder(changeDataKey(contents, dataKey, passphrase, circumstances.now(), () => undefined));
  bringBackups(register, passphrase);
}

/** The passphrase that opened the backup, around a data key that no other copy has. */
function freshProtection(opened: OpenedWith): Protection | undefined {
  if (opened.passphrase === undefined) return undefined;
  const dataKey = newKey();
  return { dataKey, wrapped: wrapKey(dataKey, opened.passphrase) };
}

/** Brings the checked copy to today's schema and under the protection that it is to have. */
function prepare(
  copy: Connection,
  own: Uint8Array | undefined,
  target: Protection | undefined,
  register: Register,
): void {
  migrate(copy);
  bringUnder(copy, own, target);
  // What speaks of today's keys and of the copies kept beside the register stays true of them.
  copy.transaction(() => {
    for (const name of ["formerKeys", "clearKeys", "backupsBehind", "checkedBackups"] as const) {
      const fact = readFact(register.connection, name);
      if (fact === undefined) removeFact(copy, name);
      else writeFact(copy, name, fact);
    }
  });
  carryNotes(copy, target?.dataKey, notesToCarry(register), register.circumstances);
  // What its pages held before must not come into the register with them.
  copy.execute("VACUUM");
}

/**
 * Kept backups come under the passphrase before the register does. Until the register has it, their key lies in it in the
 * clear, as everything else does.
 */
function protectKeptBackups(register: Register, target: Protection): void {
  const { connection } = register;
  const clear = Buffer.from(target.dataKey).toString("base64");
  connection.transaction(() => {
    const keys = readFact(connection, "clearKeys")?.keys ?? [];
    writeFact(connection, "clearKeys", { keys: [clear, ...keys] });
    // Where a stop keeps the register from its content, they come back to it at the next opening.
    writeFact(connection, "backupsBehind", { since: register.circumstances.now().toISOString() });
  });
  register.backupTroubles = bringBackupsUnder(register.file, keysOfCopies(register), target);
}

/** The register's own key fits what it was and what it becomes: a passphrase that is taken over is only on its way. */
async function replaceContent(register: Register, copy: Connection): Promise<void> {
  const { dataKey } = register;
  register.connection.close();
  try {
    await copyInto(copy, register.file);
    reached("content replaced");
  } finally {
    const connection = new Connection(register.file);
    settle(connection);
    register.continueOn(connection, dataKey);
  }
}

/** What opens the backup's content. */
interface OpenedWith {
  /** Undefined where no passphrase protects it. */
  readonly key: Uint8Array | undefined;
  /** Where it was one that was given, and not a key that the register knows. */
  readonly passphrase?: Uint8Array;
}

function openedWith(backup: Connection, register: Register, passphrases: BackupPassphrases): OpenedWith {
  if (readFact(backup, "conversion") !== undefined) {
    throw new RequestRefused(
      "This is a register whose passphrase was just being set or taken away when it was copied: open it once as a register, then back it up.",
    );
  }
  const wrapped = readFact(backup, "protection");
  if (wrapped === undefined) return { key: undefined };
  // A register without a passphrase takes over the backup's, so it must be given even where the key is known.
  if (register.encrypted && isOwnKeyKnown(register, backup)) return { key: ownKeyOf(backup, keysOfCopies(register)) };
  for (const passphrase of [passphrases.register, passphrases.file]) {
    const key = passphrase === undefined ? undefined : unwrapKey(wrapped, passphrase);
    if (key !== undefined && passphrase !== undefined) return { key: ownKeyOf(backup, [key]), passphrase };
  }
  throw new RequestRefused("The register in this backup has a passphrase of its own: give that one to restore it.");
}

function checkContents(backup: Connection, key: Uint8Array | undefined): void {
  const contents = contentsOf(backup, key);
  const { problems } = verifyRegister(contents.store, contents.journal, contents.lines, true);
  contents.forget();
  const [first] = problems;
  if (first !== undefined) throw new RequestRefused(`This backup is damaged and was not used. ${first}`);
}
