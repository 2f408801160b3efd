import { copyFileSync } from "node:fs";
import { RequestRefused } from "../refusals/request-refused.ts";
import { Connection, sqliteTrouble } from "./connection.ts";
import { diskTrouble } from "./file-sink.ts";
import { bringUnder, needsRewrapOnly, type Protection } from "./keys/bring-under.ts";
import { type Contents, contentsOf, opensWith } from "./keys/contents.ts";
import { unwrapKey } from "./passphrase-key.ts";
import { readFact } from "./register-facts.ts";
import { finishFile, keptBackups, partialPath, removeDatabase } from "./register-folder.ts";
import { reached } from "./steps.ts";

/** A kept backup that could not be written again, and why, in one sentence. It stays as it is. */
export interface BackupTrouble {
  readonly path: string;
  readonly because: string;
}

/** The trouble in a sentence for the person. */
export function troubleWords({ path, because }: BackupTrouble): string {
  return `The backup ${path} was left as it is: ${because.replace(/\.$/, "")}.`;
}

/** A copy's own data key among those that are known; undefined where no passphrase protects it. */
export function ownKeyOf(copy: Connection, known: readonly Uint8Array[]): Uint8Array | undefined {
  if (readFact(copy, "protection") === undefined) return undefined;
  const own = known.find((key) => opensWith(copy, key));
  if (own !== undefined) return own;
  throw new RequestRefused("it is under another passphrase than the register");
}

/**
 * Changes a kept backup: all of it in a copy that then takes its place.
 * @param work what is done in the copy, which is opened with its own key
 * @throws RequestRefused when none of the known keys is its own, or it cannot be written
 */
export function rewriteBackup(
  path: string,
  known: readonly Uint8Array[],
  work: (connection: Connection, own: Uint8Array | undefined) => void,
): void {
  const partial = partialPath(path);
  removeDatabase(partial);
  try {
    takeInLog(path);
    copyFileSync(path, partial);
    const connection = new Connection(partial);
    try {
      connection.execute("PRAGMA secure_delete = ON; PRAGMA foreign_keys = ON;");
      work(connection, ownKeyOf(connection, known));
      connection.execute("VACUUM");
    } finally {
      connection.close();
    }
    reached("backup written beside");
    finishFile(partial, path);
    reached("backup replaced");
  } catch (error) {
    removeDatabase(partial);
    throw error;
  }
}

/** The same for what is done to its records and its journal, in one transaction. */
export function rewriteBackupContents(
  path: string,
  known: readonly Uint8Array[],
  work: (contents: Contents) => void,
): void {
  rewriteBackup(path, known, (connection, own) => {
    const contents = contentsOf(connection, own);
    try {
      connection.transaction(() => work(contents));
    } finally {
      contents.forget();
    }
  });
}

/** Does something with each kept backup; one with which it cannot be done is named, and keeps none of the others. */
export function withEachBackup(registerFile: string, work: (path: string) => void): readonly BackupTrouble[] {
  return keptBackups(registerFile).flatMap((path) => {
    try {
      work(path);
      return [];
    } catch (error) {
      return [{ path, because: sentenceOf(error, path) }];
    }
  });
}

/**
 * Brings every kept backup under a protection, each opened with its own key.
 * @param target undefined for none
 */
export function bringBackupsUnder(
  registerFile: string,
  known: readonly Uint8Array[],
  target: Protection | undefined,
): readonly BackupTrouble[] {
  return withEachBackup(registerFile, (path) => {
    const connection = new Connection(path);
    try {
      if (JSON.stringify(readFact(connection, "protection")) === JSON.stringify(target?.wrapped)) return;
      const own = ownKeyOf(connection, known);
      // Wrapping keys again is done in place: seconds, whatever the backup holds.
      if (needsRewrapOnly(connection, own, target)) {
        connection.execute("PRAGMA secure_delete = ON;");
        bringUnder(connection, own, target);
        return reached("backup wrapped again");
      }
    } finally {
      connection.close();
    }
    rewriteBackup(path, known, (copy, own) => bringUnder(copy, own, target));
  });
}

/** Data keys of kept backups that none of the known keys opens and this passphrase does. */
export function keysUnder(
  registerFile: string,
  known: readonly Uint8Array[],
  passphrase: Uint8Array,
): readonly Uint8Array[] {
  const found: Uint8Array[] = [];
  // One that cannot be opened at all is named when it is to be written again.
  withEachBackup(registerFile, (path) => {
    const connection = new Connection(path, { readOnly: true });
    try {
      const wrapped = readFact(connection, "protection");
      if (wrapped === undefined || [...known, ...found].some((key) => opensWith(connection, key))) return;
      const key = unwrapKey(wrapped, passphrase);
      if (key !== undefined) found.push(key);
    } finally {
      connection.close();
    }
  });
  return found;
}

/** SQLite finishes or takes back what a stop broke off in a backup, before its bytes are copied. */
function takeInLog(path: string): void {
  const connection = new Connection(path);
  try {
    readFact(connection, "identity");
  } finally {
    connection.close();
  }
}

/** @throws what is our own mistake */
function sentenceOf(error: unknown, path: string): string {
  if (error instanceof RequestRefused) return error.message;
  const sentence = (sqliteTrouble(error) ?? diskTrouble(error, path))?.message;
  if (sentence === undefined) throw error;
  return sentence;
}
