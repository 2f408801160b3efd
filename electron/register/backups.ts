import { statSync } from "node:fs";
import { RequestRefused, telling } from "../refusals/request-refused.ts";
import { type ByteSink, type ByteSource, openFile } from "./byte-source.ts";
import { Connection, numberOf, textOf } from "./connection.ts";
import { checkOf } from "./copies/check-schema.ts";
import { noteKeptCheck } from "./copies/kept-checks.ts";
import { checkFile, copyDatabase } from "./copy-database.ts";
import { writeFileThrough } from "./file-sink.ts";
import { whereFree } from "./leave-nothing-behind.ts";
import { schemaOf } from "./migrations.ts";
import { withNamelessDatabase } from "./nameless-file.ts";
import { isSameFile, realPath } from "./real-path.ts";
import type { RecordContent } from "./record-schemas.ts";
import type { Register } from "./register.ts";
import { readFact } from "./register-facts.ts";
import { backupPath, dailyBackups, passingPath, removeDatabase } from "./register-folder.ts";
import type { BackupPreview } from "./register-views.ts";
import { isSealed, openSealed, StaysSealed, sealInto } from "./sealed-file.ts";
import { reached } from "./steps.ts";
import { convertToEnd } from "./unfinished.ts";

/** Daily backups kept. */
const keptDays = 10;

/**
 * Makes today's backup beside the register where there is none yet, and lets go of the oldest beyond the last ten.
 * @returns where it lies; undefined where today's was there already
 */
export async function keepDailyBackup(register: Register): Promise<string | undefined> {
  register.requireWritable();
  // A copy of fields on their way to another protection would lie in both.
  if (register.conversion !== undefined) return undefined;
  const now = register.circumstances.now();
  const today = now.toISOString().slice(0, 10);
  if (dailyBackups(register.file).some((path) => path.includes(`daily-${today}`))) return undefined;
  return makeDailyBackup(register, now);
}

/**
 * Makes a backup among the daily ones at once. The oldest go; before them those whose names lie ahead of it, made while
 * the machine's clock was wrong, so that neither a clock put back nor one that ran ahead ever costs the newest.
 */
export async function makeDailyBackup(register: Register, now = register.circumstances.now()): Promise<string> {
  register.requireWritable();
  convertToEnd(register);
  const path = backupPath(register.file, "daily", now);
  await copyDatabase(register.connection, path);
  // Where it cannot be noted the copy is there all the same, and listed as one that was not checked.
  whereFree(() => noteKeptCheck(register, path, checkedNow(register, path)));
  const kept = dailyBackups(register.file);
  const newest = kept.indexOf(path);
  const firstToGo = [...kept.slice(newest + 1), ...kept.slice(0, Math.max(0, newest))];
  for (const old of firstToGo.slice(0, Math.max(0, kept.length - keptDays))) {
    removeDatabase(old);
    reached("oldest backup removed");
  }
  return path;
}

/** Copies the register to a place of the person's choice, under a passphrase if one is given, and journals where. */
export async function backUpTo(register: Register, path: string, passphrase: Uint8Array | undefined): Promise<void> {
  const place = placeForCopy(register.file, path);
  convertToEnd(register);
  if (passphrase === undefined) await copyDatabase(register.connection, place);
  else {
    const plain = passingPath(register.file);
    try {
      await copyDatabase(register.connection, plain);
      writeFileThrough(place, (sink) => {
        const source = openFile(plain);
        try {
          const sealed = sealInto(sink, passphrase);
          copyBytes(source, sealed);
          sealed.end();
        } finally {
          source.close();
        }
      });
    } finally {
      removeDatabase(plain);
    }
  }
  const sealed = passphrase !== undefined;
  // What was sealed was checked before; the sealed file itself was not opened again.
  const checked = sealed ? {} : checkedNow(register, place);
  noteCopy(register, { kind: "backup", path: place, encrypted: sealed || register.encrypted, sealed, ...checked });
}

/** The file's structure was checked when it was copied. */
function checkedNow(register: Register, path: string) {
  return {
    verifiedAt: register.circumstances.now().toISOString(),
    found: checkOf("structure", [], statSync(path).mtimeMs),
  };
}

/**
 * Where a copy truly goes, whatever links lead there.
 * @throws RequestRefused when that is the register itself or a file it works with
 */
export function placeForCopy(registerFile: string, path: string): string {
  const place = realPath(path);
  const own = ["", "-wal", "-shm", "-lock", "-journal", "-passing"].map((ending) => `${registerFile}${ending}`);
  if (!own.some((each) => isSameFile(each, place))) return place;
  throw new RequestRefused(`${path} is the register itself or belongs to it; nothing was written. Name another place.`);
}

/** Keeps where a copy went, so that erasing can name it; a register open for reading alone cannot. */
export function noteCopy(register: Register, copy: Omit<RecordContent<"copies">, "at">, athlete?: string): void {
  if (register.readOnlyBecause !== undefined) return;
  const at = register.circumstances.now().toISOString();
  try {
    register.writes.act("copy made elsewhere", (changes) =>
      changes.add("copies", athlete === undefined ? {} : { athlete }, { ...copy, at }),
    );
  } catch (error) {
    throw telling(error, `${copy.path} was written, but not noted in the register: erasing would not name it.`);
  }
}

/**
 * Lends an opened backup, sealed or not, after it was checked.
 * @throws RequestRefused when it is no backup, is damaged, or its passphrase is another one
 */
export function withBackup<Result>(
  path: string,
  passphrase: Uint8Array | undefined,
  registerFile: string,
  work: (backup: Connection) => Result | Promise<Result>,
): Promise<Result> {
  return withUnsealed(path, passphrase, registerFile, (backup) => {
    checkFile(backup);
    return work(backup);
  });
}

/**
 * Lends whatever database a backup is said to be, sealed or not, before anything of it was looked at.
 * @throws StaysSealed when it is under a passphrase of its own that is not given or another one
 */
export async function withUnsealed<Result>(
  path: string,
  passphrase: Uint8Array | undefined,
  registerFile: string,
  work: (backup: Connection) => Result | Promise<Result>,
): Promise<Result> {
  if (isSameFile(path, registerFile)) throw new RequestRefused("This is the register itself, not a backup of it.");
  const source = openBackupFile(path);
  try {
    if (isSealed(source)) return await withOpened(source, passphrase, passingPath(registerFile), work);
    const connection = new Connection(path, { readOnly: true });
    try {
      return await work(connection);
    } finally {
      connection.close();
    }
  } finally {
    source.close();
  }
}

async function withOpened<Result>(
  source: ByteSource,
  passphrase: Uint8Array | undefined,
  passing: string,
  work: (backup: Connection) => Result | Promise<Result>,
): Promise<Result> {
  if (passphrase === undefined) throw new StaysSealed("This backup is under a passphrase: give it to open it.");
  const plain = openSealed(source, passphrase);
  try {
    // What was sealed may lie in the clear inside, and the register beside it be under a passphrase.
    return await withNamelessDatabase(passing, (sink) => copyBytes(plain, sink), work);
  } finally {
    plain.close();
  }
}

/** What an opened backup holds. Counts need no key. */
export function previewOf(
  backup: Connection,
): Omit<BackupPreview, "afterwards" | "needsPassphrase" | "protectionSentence"> {
  const count = (table: string) =>
    numberOf(backup.one(`SELECT count(*) AS rows FROM ${table} WHERE binned = 0`) ?? {}, "rows");
  const last = backup.one("SELECT at FROM journal ORDER BY sequence DESC LIMIT 1");
  const lastChange = last === undefined ? "" : textOf(last, "at");
  return {
    schema: schemaOf(backup),
    athletes: count("athletes"),
    sessions: count("sessions"),
    recordings: count("recordings"),
    lastChange,
    encrypted: readFact(backup, "protection") !== undefined,
  };
}

function openBackupFile(path: string) {
  try {
    return openFile(path);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : "";
    if (code !== "ENOENT" && code !== "EACCES" && code !== "EISDIR") throw error;
    throw new RequestRefused(code === "ENOENT" ? `There is no backup at ${path}.` : `${path} cannot be read.`);
  }
}

function copyBytes(source: ByteSource, sink: ByteSink): void {
  const piece = 1024 * 1024;
  for (let at = 0; at < source.size; at += piece) sink.write(source.read(at, piece));
}
