import { RequestRefused } from "../refusals/request-refused.ts";
import type { Connection } from "./connection.ts";
import { readFact, removeFact } from "./register-facts.ts";
import { reached } from "./steps.ts";

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

/**
 * Finishes what was broken off; where another window is reading just now, that is left to a later opening.
 * @returns false where it was left
 */
export function whereFree(finish: () => void): boolean {
  try {
    finish();
    return true;
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    return false;
  }
}

/**
 * Takes the write-ahead log into the file and makes it empty.
 * @throws RequestRefused when another program keeps reading for so long that it cannot be emptied
 */
export function emptyLog(connection: Connection): void {
  if (connection.one("PRAGMA wal_checkpoint(TRUNCATE)")?.busy !== 0) {
    throw new RequestRefused(
      "It is done, but another window is reading the register, so its log still holds what was there before. Close that window and open the register again.",
    );
  }
  reached("log emptied");
}
