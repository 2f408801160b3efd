import { closeSync, openSync } from "node:fs";
import { DatabaseSync } from "node:sqlite";
import { sayingPlainly } from "./connection.ts";

/** The right to write to a register, held by one program at a time. */
export interface RegisterLock {
  release(): void;
}

/**
 * Takes the lock of a register. The operating system holds it through an empty file beside the register and drops it
 * when the process ends, however it ends: a lock is never left behind.
 * @returns undefined when another program still holds it after waiting
 */
export function takeLock(registerFile: string, waitMilliseconds: number): RegisterLock | undefined {
  const path = `${registerFile}-lock`;
  closeSync(openSync(path, "a", 0o600));
  const database = sayingPlainly(() => new DatabaseSync(path, { timeout: waitMilliseconds }));
  try {
    database.exec("PRAGMA journal_mode = MEMORY; BEGIN EXCLUSIVE");
  } catch (error) {
    database.close();
    if (isBusy(error)) return undefined;
    return sayingPlainly(() => {
      throw error;
    });
  }
  return { release: () => database.close() };
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && "errcode" in error && error.errcode === 5;
}
