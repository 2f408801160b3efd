import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from "node:fs";
import { basename, dirname, join } from "node:path";
import { reached } from "./steps.ts";

/** How the name of the demo world's own register begins: made of the program's recordings alone, and only copied from. */
export const demoOriginalStart = "demo-original-";

/** Where the backups of a register lie. */
export function backupFolder(registerFile: string): string {
  return `${registerFile}-backups`;
}

/** The daily backups, oldest first. */
export function dailyBackups(registerFile: string): readonly string[] {
  return namesIn(registerFile)
    .filter((name) => name.startsWith("daily-"))
    .map((name) => join(backupFolder(registerFile), name));
}

/**
 * Every copy the register itself keeps: daily ones and those made before a migration or a restoration; by where they
 * truly lie, because writing one anew in the place of a link would leave the old one behind it.
 */
export function keptBackups(registerFile: string): readonly string[] {
  return namesIn(registerFile)
    .map((name) => behindLinks(join(backupFolder(registerFile), name)))
    .filter((path) => path !== registerFile);
}

/** A place for a new backup: its reason and the time, to the second, in the name. */
export function backupPath(registerFile: string, reason: string, now: Date): string {
  const folder = backupFolder(registerFile);
  if (!existsSync(folder)) {
    mkdirSync(folder, { mode: 0o700 });
    flushFolder(folder);
  }
  const time = now.toISOString().slice(0, 19).replaceAll(":", "-");
  // One more than the last of this second, also where earlier ones are gone: names stand in the order they were made.
  const start = `${reason}-${time}`;
  const numbers = namesIn(registerFile).flatMap((name) => {
    const stamp = stampOf(name);
    return stamp.time === start ? [stamp.number] : [];
  });
  const number = Math.max(0, ...numbers) + 1;
  return join(folder, `${start}${number === 1 ? "" : `-${number}`}.sqlite`);
}

/** A place beside a file where it is written before it takes its name. */
export function partialPath(path: string): string {
  return join(dirname(path), `.${basename(path)}.part`);
}

/** Makes an empty file that its owner alone may read, in the place of whatever lay there half-written. */
export function makePrivateFile(path: string): void {
  removeDatabase(path);
  closeSync(openSync(path, "wx", 0o600));
}

/** Gives a finished file its name, so that there is either all of it or none. */
export function finishFile(partial: string, path: string): void {
  chmodSync(partial, 0o600);
  const file = openSync(partial, "r+");
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  reached("file flushed");
  renameSync(partial, path);
  reached("file named");
  flushFolder(dirname(path));
}

/** Removes a database and what SQLite keeps beside it. */
export function removeDatabase(path: string): void {
  for (const ending of ["", "-wal", "-shm", "-journal"]) rmSync(`${path}${ending}`, { force: true });
}

/**
 * A place for a copy that is only wanted for a moment: beside the register, so that what lies there in the clear never
 * touches the disk that a sealed file is meant for.
 */
export function passingPath(registerFile: string): string {
  return `${registerFile}-passing`;
}

/** Where a backup is made ready to take the place of the register's content. */
export function restoringPath(registerFile: string): string {
  return `${registerFile}-restoring`;
}

/** Removes what a copy that was broken off has left. */
export function removePartialBackups(registerFile: string): void {
  const passing = [passingPath(registerFile), restoringPath(registerFile)];
  for (const path of passing.flatMap((each) => [each, partialPath(each)])) removeDatabase(path);
  const folder = backupFolder(registerFile);
  if (!existsSync(folder)) return;
  for (const name of readdirSync(folder)) if (name.startsWith(".")) rmSync(join(folder, name), { force: true });
}

/** Makes the register readable by its owner alone, where it is ours to do so. */
export function makePrivate(path: string): void {
  const { mode, uid } = statSync(path);
  const isOwn = process.getuid === undefined || process.getuid() === uid;
  if (isOwn && (mode & 0o077) !== 0) chmodSync(path, 0o600);
}

function namesIn(registerFile: string): readonly string[] {
  const folder = backupFolder(registerFile);
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .filter((name) => name.endsWith(".sqlite") && !name.startsWith("."))
    .toSorted((first, second) => {
      const [one, other] = [stampOf(first), stampOf(second)];
      if (one.time === other.time) return one.number - other.number;
      return one.time < other.time ? -1 : 1;
    });
}

/** The reason and time in a backup's name, and which of that second it is. */
function stampOf(name: string): { readonly time: string; readonly number: number } {
  const [, time = name, number = "1"] = /^(.*T\d\d-\d\d-\d\d)(?:-(\d+))?\.sqlite$/.exec(name) ?? [];
  return { time, number: Number(number) };
}

/** A link that leads nowhere stays itself: whatever opens it says so. */
function behindLinks(path: string): string {
  return existsSync(path) ? realpathSync.native(path) : path;
}

function flushFolder(folder: string): void {
  // Windows cannot open a folder to flush it; its file system orders renames itself.
  if (process.platform === "win32") return;
  const handle = openSync(folder, "r");
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}
