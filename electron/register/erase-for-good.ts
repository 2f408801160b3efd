import { RequestRefused } from "../request-refused.ts";
import type { Connection } from "./connection.ts";
import { eraseRecords, withDependents } from "./erase-records.ts";
import { rewriteBackupContents, withEachBackup } from "./kept-backups.ts";
import type { RecordKey } from "./record-tables.ts";
import type { Register } from "./register.ts";
import { readFact, removeFact, writeFact } from "./register-facts.ts";
import { keptBackups } from "./register-folder.ts";
import type { ErasurePreview } from "./register-views.ts";
import { reached } from "./steps.ts";
import { keysOfCopies } from "./unfinished.ts";

/** What erasing these records would remove, and which copies it cannot reach. */
export function previewErasure(register: Register, roots: readonly RecordKey[]): ErasurePreview {
  const { store, reads } = register.contents;
  const keys = withDependents(store, roots);
  const count = (kind: string) => keys.filter((each) => each.kind === kind).length;
  const [athletes, sessions, recordings] = [count("athletes"), count("sessions"), count("recordings")];
  return {
    athletes,
    sessions,
    recordings,
    others: keys.length - athletes - sessions - recordings,
    backups: keptBackups(register.file).length,
    copiesElsewhere: reads
      .records("copies")
      .map(({ content }) => `${content.path} (${content.kind}, ${content.at.slice(0, 10)})`),
  };
}

/**
 * Removes records from the bin for good: from the register, from the journal's contents and from every backup the
 * register keeps. Broken off at any moment, it is finished when the register is next opened.
 * @throws RequestRefused when they are not in the bin
 */
export function eraseForGood(register: Register, roots: readonly RecordKey[]): void {
  register.requireWritable();
  const { store, journal } = register.contents;
  for (const { kind, id } of roots) {
    if (store.read(kind, id)?.binned) continue;
    throw new RequestRefused("Only what lies in the bin can be erased; nothing was changed.");
  }
  store.connection.transaction(() => {
    eraseRecords(store, journal, roots, register.circumstances);
    writeFact(store.connection, "unfinishedErasure", { records: roots.map(({ kind, id }) => ({ kind, id })) });
  });
  reached("erased from the register");
  finishErasure(register);
}

/** Takes what was erased out of free pages, the write-ahead log and the backups, where that was not yet done. */
export function finishErasure(register: Register): void {
  const { connection } = register;
  const unfinished = readFact(connection, "unfinishedErasure");
  if (unfinished === undefined) return;
  const roots = unfinished.records as readonly RecordKey[];
  leaveNothingBehind(connection);
  const known = keysOfCopies(register);
  register.backupTroubles = withEachBackup(register.file, (path) =>
    rewriteBackupContents(path, known, ({ store, journal }) =>
      eraseRecords(store, journal, roots, register.circumstances),
    ),
  );
  connection.transaction(() => removeFact(connection, "unfinishedErasure"));
  reached("erasure ended");
  // Lists and steps that could be undone are made anew: they spoke of what is gone.
  register.continueUnder(register.dataKey);
}

/**
 * Writes the file anew without free pages, and empties the write-ahead log.
 * @throws RequestRefused when another program keeps reading for so long that the log cannot be emptied
 */
export function leaveNothingBehind(connection: Connection): void {
  emptyLog(connection);
  connection.execute("VACUUM");
  reached("file written anew");
  emptyLog(connection);
}

/** Cleans the file after its content was written again under another protection, where that was not yet done. */
export function finishCleaning(connection: Connection): void {
  const unfinished = readFact(connection, "unfinishedCleaning");
  if (unfinished === undefined) return;
  if (unfinished.onlyLog) emptyLog(connection);
  else leaveNothingBehind(connection);
  connection.transaction(() => removeFact(connection, "unfinishedCleaning"));
}

/** Finishes what was broken off; where another window is reading just now, that is left to a later opening. */
export function whereFree(finish: () => void): void {
  try {
    finish();
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
  }
}

function emptyLog(connection: Connection): void {
  if (connection.one("PRAGMA wal_checkpoint(TRUNCATE)")?.busy !== 0) {
    throw new RequestRefused(
      "It is done, but another window is reading the register, so its log still holds what was there before. Close that window and open the register again.",
    );
  }
  reached("log emptied");
}
