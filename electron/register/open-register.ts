import { accessSync, closeSync, constants, existsSync, openSync, statSync } from "node:fs";
import { userInfo } from "node:os";
import { basename } from "node:path";
import { pathToFileURL } from "node:url";
import { RequestRefused } from "../refusals/request-refused.ts";
import { hasAthleteLines } from "./athlete-lines.ts";
import { Connection, settle } from "./connection.ts";
import { checkSchema, checkStructure, checkTables, copyDatabase, fileBytes } from "./copy-database.ts";
import { finishErasure } from "./erasing/erase-for-good.ts";
import { diskTrouble } from "./file-sink.ts";
import { contentsOf } from "./keys/contents.ts";
import { finishCleaning, whereFree } from "./leave-nothing-behind.ts";
import { applicationId, applicationOf, latestSchema, migrate, schemaOf } from "./migrations.ts";
import { namesOf, realPath } from "./real-path.ts";
import { Register } from "./register.ts";
import { readFact, registerId, writeIdentity } from "./register-facts.ts";
import { backupPath, makePrivate, removePartialBackups } from "./register-folder.ts";
import { takeLock } from "./register-lock.ts";
import { actorOf, type Circumstances } from "./register-writes.ts";
import { reached } from "./steps.ts";
import { finishWhatWasBrokenOff } from "./unfinished.ts";

export interface OpenOptions {
  /** Makes a new register where there is none. */
  readonly create?: boolean;
  readonly passphrase?: Uint8Array;
  /** How long to wait for another program that has the register open. */
  readonly waitMilliseconds?: number;
  readonly circumstances?: Circumstances;
  /** Leaves bringing fields to a new protection to the caller, who does it step by step (`convertStep`). */
  readonly convertLater?: boolean;
}

/** Another program has this long to close the register before it is opened for reading alone. */
const defaultWaitMilliseconds = 2000;

/**
 * Up to this size the whole structure is looked at on opening; of a larger one the tables that opening reads, and the
 * rest with each day's backup. Each row has a checksum that is looked at whenever it is read.
 */
const wholeCheckBytes = 128 * 1024 * 1024;
const tablesReadOnOpening = ["facts", "journal", "athletes", "athleteLines"];

/** The user of the operating system, and the machine's clock. */
export function machineCircumstances(): Circumstances {
  return { who: userInfo().username, now: () => new Date() };
}

/**
 * Opens a register: takes its lock, looks at its structure, copies it before bringing an older schema up to date, and
 * finishes an erasure that was broken off. Where another program holds it, or its folder cannot be written to, it is
 * opened for reading alone.
 * @throws RequestRefused in one sentence when it cannot be opened; the file is then as it was
 */
export async function openRegister(path: string, options: OpenOptions = {}): Promise<Register> {
  // Everything below sees this name alone: a link would have a lock and backups of its own.
  const file = realPath(path);
  const circumstances = options.circumstances ?? machineCircumstances();
  const isNew = !existsSync(file) || statSync(file).size === 0;
  if (isNew && !options.create) throw new RequestRefused(`There is no register at ${file}.`);
  const right = rightToWrite(file, isNew, options.waitMilliseconds ?? defaultWaitMilliseconds);
  if (typeof right === "string" && isNew) throw new RequestRefused(right);
  if (typeof right === "string") {
    const register = new Register(file, openForReading(file), circumstances, right, () => undefined, finishing);
    return unlocked(register, options.passphrase);
  }
  let connection: Connection | undefined;
  try {
    connection = await openForWriting(file, circumstances);
    const register = new Register(
      file,
      connection,
      circumstances,
      undefined,
      right.release,
      finishing,
      options.convertLater,
    );
    whereFree(() => finishCleaning(register.connection));
    unlocked(register, options.passphrase);
    if (!register.encrypted) finishWhatWasBrokenOff(register);
    return register;
  } catch (error) {
    connection?.close();
    right.release();
    throw error;
  }
}

const finishing = { brokenOff: finishWhatWasBrokenOff, erasure: finishErasure };

function unlocked(register: Register, passphrase: Uint8Array | undefined): Register {
  if (passphrase !== undefined) register.unlock(passphrase);
  return register;
}

/** Each name of a file would have a lock and a log of its own: two programs could write past each other. */
const secondName =
  "The register's file has a second name elsewhere (a hard link), past which another program could write, so it is open for reading only, and changes that another program is just making may be missing. Remove the other name, or copy the file, to write to it.";

/** The lock, or why there is none. */
function rightToWrite(file: string, isNew: boolean, waitMilliseconds: number) {
  try {
    if (!isNew) accessSync(file, constants.W_OK);
    if (namesOf(file) > 1) return secondName;
    const lock = takeLock(file, waitMilliseconds);
    return lock ?? "Another window or program has this register open, so it is open for reading only.";
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : "";
    // The lock is another user's file, or lies where nothing may be written.
    const isRefused = error instanceof RequestRefused && !isNew;
    if (isRefused || code === "EACCES" || code === "EROFS" || code === "EPERM") {
      return "The register's file or folder may not be written to by this user, so it is open for reading only.";
    }
    throw diskTrouble(error, file) ?? error;
  }
}

function openForReading(file: string): Connection {
  const waiting = statSync(`${file}-wal`, { throwIfNoEntry: false })?.size ?? 0;
  // A finished register in a folder that cannot be written to: SQLite must be told that nobody else writes either.
  const immutable = new URL(`${pathToFileURL(file).href}?immutable=1`);
  const connection = new Connection(waiting === 0 && !existsSync(`${file}-shm`) ? immutable : file, { readOnly: true });
  try {
    if (waiting > 0) checkLogReadable(connection, file);
    checkIsRegister(connection);
    checkSchema(connection);
    if (schemaOf(connection) < latestSchema) {
      throw new RequestRefused(
        "This register has an older schema and must be opened for writing once; here it can only be read.",
      );
    }
    checkOnOpening(connection);
    return connection;
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** A log that was left behind can only be read where SQLite may write beside it. */
function checkLogReadable(connection: Connection, file: string): void {
  try {
    applicationOf(connection);
  } catch (error) {
    if (!(error instanceof RequestRefused)) throw error;
    throw new RequestRefused(
      `The register was not closed and its last changes stand in ${basename(file)}-wal, which can only be taken in where this user may write. Copy both files to such a folder and open the register there.`,
    );
  }
}

async function openForWriting(file: string, circumstances: Circumstances): Promise<Connection> {
  try {
    if (!existsSync(file)) closeSync(openSync(file, "wx", 0o600));
    makePrivate(file);
  } catch (error) {
    throw diskTrouble(error, file) ?? error;
  }
  removePartialBackups(file);
  const connection = new Connection(file);
  try {
    if (!isEmpty(connection)) checkIsRegister(connection);
    checkSchema(connection);
    settle(connection);
    if (isEmpty(connection)) begin(connection, circumstances);
    checkOnOpening(connection);
    await bringUpToDate(connection, file, circumstances);
    return connection;
  } catch (error) {
    connection.close();
    throw error;
  }
}

/** Brings an older register up to date, after a copy of it was made and checked. */
export async function bringUpToDate(connection: Connection, file: string, { now }: Circumstances): Promise<void> {
  const schema = schemaOf(connection);
  if (schema === latestSchema) return;
  await copyDatabase(connection, backupPath(file, `before-schema-${latestSchema}`, now()));
  migrate(connection);
  reached("schema raised");
}

/** A new register: schema, identity and the first entry of the journal at once. */
function begin(connection: Connection, circumstances: Circumstances): void {
  connection.transaction(() => {
    migrate(connection);
    writeIdentity(connection, circumstances.now());
    contentsOf(connection, undefined).journal.append(
      circumstances.now(),
      { action: "register made", ...actorOf(circumstances) },
      [],
    );
  });
}

function isEmpty(connection: Connection): boolean {
  return connection.one("SELECT name FROM sqlite_schema LIMIT 1") === undefined;
}

function checkIsRegister(connection: Connection): void {
  if (applicationOf(connection) !== applicationId) {
    throw new RequestRefused("The file is no register: it does not hold what a register holds.");
  }
}

function checkOnOpening(connection: Connection): void {
  checkTables(connection);
  const present = tablesReadOnOpening.filter((each) => each !== "athleteLines" || hasAthleteLines(connection));
  checkStructure(connection, fileBytes(connection) <= wholeCheckBytes ? undefined : present);
  registerId(connection);
  readFact(connection, "protection");
}
