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
  makeOnce(path);
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

/** Only ever made, never opened again by us: closing any handle on a file drops this process's locks on it. */
function makeOnce(path: string): void {
  try {
    closeSync(openSync(path, "wx", 0o600));
  } catch (error) {
    if (!(error instanceof Error && "code" in error && error.code === "EEXIST")) throw error;
  }
}

function isBusy(error: unknown): boolean {
  return error instanceof Error && "errcode" in error && error.errcode === 5;
}
