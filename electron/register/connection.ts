import { DatabaseSync, type SQLInputValue, type SQLOutputValue, type StatementSync } from "node:sqlite";
import { RequestRefused } from "../request-refused.ts";

/** One row, by column. */
export type Row = Readonly<Record<string, SQLOutputValue>>;

/** How long a statement waits for another process that is just writing. */
const busyMilliseconds = 5000;

/** Statements on one SQLite file, prepared once each. */
export class Connection {
  readonly #database: DatabaseSync;
  readonly #statements = new Map<string, StatementSync>();
  /** While it is true a transaction that was begun stays open, so that more can join it. */
  #isHeld = false;
  /** SQLite took a whole transaction back by itself, as it does where the disk is full. */
  #lostAll = false;

  /** @param location a path, or a `file:` address where SQLite must be told more */
  constructor(location: string | URL, options: { readonly readOnly?: boolean } = {}) {
    this.#database = sayingPlainly(
      () => new DatabaseSync(location, { readOnly: options.readOnly ?? false, timeout: busyMilliseconds }),
    );
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

  /** All of the work or nothing of it; within a transaction it is a part that can fail alone, and lasts with the whole. */
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
      return this.#orNothing(() => {
        const result = work();
        if (this.#lostAll) throw new RequestRefused(rolledBack);
        return result;
      }, true);
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
      if (ends && this.#database.isTransaction) this.execute("COMMIT");
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

  #prepared(sql: string): StatementSync {
    const known = this.#statements.get(sql);
    if (known !== undefined) return known;
    const statement = this.#database.prepare(sql);
    this.#statements.set(sql, statement);
    return statement;
  }
}

const damagedFile = 11;

/** The sentence for a part of an action that failed in a way that took the whole with it. */
const rolledBack = "The disk could not be written to; nothing of this was written. Make room and do it again.";

/** What SQLite's result codes mean to a person (sqlite.org/rescode.html, primary codes). */
const sentences: Readonly<Record<number, string>> = {
  5: "Another program is writing to the register; nothing of this was written. Try again in a moment.",
  8: "The register's file or folder may not be written to; nothing of this was written.",
  10: "The disk could not be written to or read from (it may be full or gone); nothing of this was written.",
  [damagedFile]: "The register's file is damaged. Restore the newest backup; nothing of this was written.",
  13: "The disk is full; nothing of this was written. Make room and do it again.",
  14: "The register's file could not be opened: the folder is missing, or may not be used by this user.",
  18: "This is too long to be kept in a register; nothing of this was written.",
  26: "The file is no register: it does not hold what a register holds.",
};

/** Runs a piece of work on a database; what goes wrong on the machine becomes a sentence, our own mistakes stay. */
export function sayingPlainly<Result>(work: () => Result): Result {
  try {
    return work();
  } catch (error) {
    const sentence = sqliteSentence(error);
    if (sentence === undefined) throw error;
    throw new RequestRefused(sentence);
  }
}

/** The sentence for an error of SQLite; undefined for any other. */
export function sqliteSentence(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("errcode" in error) || typeof error.errcode !== "number") return undefined;
  // SQLite says this of a file whose header was altered, by the code it uses for mistakes in statements.
  if (error.message === "unsupported file format") return sentences[damagedFile];
  const primaryCode = error.errcode & 0xff;
  return sentences[primaryCode];
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
