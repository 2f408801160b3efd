import { DatabaseSync, type SQLInputValue, type SQLOutputValue, type StatementSync } from "node:sqlite";
import { MachineTrouble, RequestRefused, telling } from "../refusals/request-refused.ts";
import { reached } from "./steps.ts";

/** One row, by column. */
export type Row = Readonly<Record<string, SQLOutputValue>>;

/** How long a statement waits for another process that is just writing. */
const busyMilliseconds = 5000;

/** Statements on one SQLite file, prepared once each. */
export class Connection {
  readonly #open: () => DatabaseSync;
  #database: DatabaseSync;
  readonly #statements = new Map<string, StatementSync>();
  /** While it is true a transaction that was begun stays open, so that more can join it. */
  #isHeld = false;
  /** SQLite took a whole transaction back by itself, as it does where the disk is full. */
  #lostAll = false;

  /** @param location a path, or a `file:` address where SQLite must be told more */
  constructor(location: string | URL, options: { readonly readOnly?: boolean } = {}) {
    this.#open = () =>
      sayingPlainly(
        () => new DatabaseSync(location, { readOnly: options.readOnly ?? false, timeout: busyMilliseconds }),
      );
    this.#database = this.#open();
  }

  /** For the copying of a database into another file. */
  get database(): DatabaseSync {
    return this.#database;
  }

  run(sql: string, ...values: readonly SQLInputValue[]): void {
    sayingPlainly(() => this.#prepared(sql).run(...values));
  }

  one(sql: string, ...values: readonly SQLInputValue[]): Row | undefined {
    return sayingPlainly(() => this.#prepared(sql).get(...values));
  }

  all(sql: string, ...values: readonly SQLInputValue[]): readonly Row[] {
    return sayingPlainly(() => this.#prepared(sql).all(...values));
  }

  /** Row after row, so that a large table is never in memory as a whole. */
  *each(sql: string, ...values: readonly SQLInputValue[]): Generator<Row> {
    // A statement of its own: the caller may use the same text again between two rows.
    const rows = sayingPlainly(() => this.#database.prepare(sql).iterate(...values));
    try {
      while (true) {
        const next = sayingPlainly(() => rows.next());
        if (next.done) return;
        yield next.value;
      }
    } finally {
      // A reader that stops early must not go on holding the state it began with.
      rows.return?.();
    }
  }

  /** Statements that are run once and return nothing. */
  execute(sql: string): void {
    sayingPlainly(() => this.#database.exec(sql));
  }

  /**
   * One action of a person: a transaction, of which trouble of the machine is told with what it left, unless it is a
   * part of something larger that alone knows.
   */
  action<Result>(work: () => Result): Result {
    const isPart = this.#isHeld || this.#database.isTransaction;
    return isPart ? this.transaction(work) : sayingNothingWritten(() => this.transaction(work));
  }

  /**
   * All of the work or nothing of it; within a transaction it is a part that can fail alone, and lasts with the whole.
   * What fails says only what went wrong: a transaction does not know what was done before it.
   */
  transaction<Result>(work: () => Result): Result {
    if (this.#database.isTransaction) return this.#part(work);
    this.execute("BEGIN IMMEDIATE");
    return this.#orNothing(work, !this.#isHeld);
  }

  /**
   * All the transactions of the work as one, which begins with the first of them and ends with the work. The work may go
   * on after one of them failed, where that one alone was lost.
   */
  whole<Result>(work: () => Result): Result {
    if (this.#isHeld || this.#database.isTransaction) return work();
    this.#isHeld = true;
    this.#lostAll = false;
    try {
      return sayingNothingWritten(() =>
        this.#orNothing(() => {
          const result = work();
          if (this.#lostAll) throw new MachineTrouble("The disk could not be written to.", makeRoom);
          return result;
        }, true),
      );
    } finally {
      this.#isHeld = false;
    }
  }

  #part<Result>(work: () => Result): Result {
    this.execute("SAVEPOINT part");
    try {
      const result = work();
      this.execute("RELEASE part");
      return result;
    } catch (error) {
      if (this.#database.isTransaction) this.#database.exec("ROLLBACK TO part; RELEASE part");
      else this.#lostAll = true;
      throw error;
    }
  }

  #orNothing<Result>(work: () => Result, ends: boolean): Result {
    try {
      const result = work();
      if (ends && this.#database.isTransaction) {
        reached("about to commit");
        this.execute("COMMIT");
        reached("committed");
      }
      return result;
    } catch (error) {
      // SQLite has rolled back by itself where the disk was full.
      if (this.#database.isTransaction) this.#database.exec("ROLLBACK");
      throw error;
    }
  }

  close(): void {
    this.#statements.clear();
    this.#database.close();
  }

  /** Does something while the file is not open here; what was set on the connection must be set again after it. */
  whileClosed<Result>(work: () => Result): Result {
    this.close();
    try {
      return work();
    } finally {
      this.#database = this.#open();
    }
  }

  #prepared(sql: string): StatementSync {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const statement = this.#database.prepare(sql);
    this.#statements.set(sql, statement);
    return statement;
  }
}

const damagedFile = 11;
const noDatabase = 26;

const makeRoom = "Make room and do it again.";
const restore = "Restore the newest backup.";

/**
 * What SQLite's result codes mean to a person (sqlite.org/rescode.html, primary codes), and what to do about it. What
 * was written by then is for the caller to say: the same code ends one statement, a transaction, or a later step.
 */
const troubles: Readonly<Record<number, readonly [trouble: string, advice?: string]>> = {
  5: ["Another program is writing to the register.", "Try again in a moment."],
  8: ["The register's file or folder may not be written to."],
  10: ["The disk could not be written to or read from (it may be full or gone)."],
  [damagedFile]: ["The register's file is damaged.", restore],
  13: ["The disk is full.", makeRoom],
  14: ["The register's file could not be opened: the folder is missing, or may not be used by this user."],
  18: ["This is too long to be kept in a register."],
  [noDatabase]: ["The file is no register: it does not hold what a register holds."],
};

function sayingNothingWritten<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw telling(error, "Nothing of this was written.");
  }
}

/** Runs a piece of work on a database; what goes wrong on the machine becomes a sentence, our own mistakes stay. */
export function sayingPlainly<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    throw sqliteTrouble(error) ?? error;
  }
}

/** What an error of SQLite means to a person; undefined for any other. */
export function sqliteTrouble(error: unknown): MachineTrouble | undefined {
  if (!(error instanceof Error) || !("errcode" in error) || typeof error.errcode !== "number") return undefined;
  // SQLite says this of a file whose header was altered, by the code it uses for mistakes in statements.
  const code = error.message === "unsupported file format" ? damagedFile : error.errcode & 0xff;
  const [trouble, advice] = troubles[code] ?? [];
  return trouble === undefined ? undefined : new MachineTrouble(trouble, advice);
}

/** The file itself is at fault, and trying again will not mend it. */
export function saysDamaged({ trouble }: MachineTrouble): boolean {
  return [damagedFile, noDatabase].some((code) => troubles[code]?.[0] === trouble);
}

/** A text column. */
export function textOf(row: Row, column: string): string {
  const value = row[column];
  if (typeof value !== "string") throw wrongColumn();
  return value;
}

/** A number column. */
export function numberOf(row: Row, column: string): number {
  const value = row[column];
  if (typeof value !== "number") throw wrongColumn();
  return value;
}

/** A column of bytes. */
export function bytesOf(row: Row, column: string): Uint8Array {
  const value = row[column];
  if (!(value instanceof Uint8Array)) throw wrongColumn();
  return value;
}

/** Tables are strict: only a damaged file holds something else in a column than what was written. */
function wrongColumn(): RequestRefused {
  return new RequestRefused(
    "A row does not hold what it must: the register's file is damaged. Restore the newest backup.",
  );
}

/** How SQLite keeps what it acknowledged, and leaves nothing behind of what is deleted. */
export function settle(connection: Connection): void {
  connection.execute(
    "PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA secure_delete = ON; PRAGMA trusted_schema = OFF;",
  );
}
