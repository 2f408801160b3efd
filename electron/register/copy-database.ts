import { backup } from "node:sqlite";
import { RequestRefused } from "../refusals/request-refused.ts";
import { Connection, numberOf, sqliteTrouble } from "./connection.ts";
import { diskTrouble } from "./file-sink.ts";
import { applicationId, applicationOf, latestSchema, migrate, schemaOf } from "./migrations.ts";
import { readFact } from "./register-facts.ts";
import { finishFile, makePrivateFile, partialPath, removeDatabase } from "./register-folder.ts";
import { reached } from "./steps.ts";

/** Pages copied at a time; the program answers in between. */
const pagesAtATime = 2000;

/**
 * Copies an open register to a file of its own, checks the copy by opening it again, and only then gives it its name.
 * @throws RequestRefused when it cannot be written or is not the same; then nothing is left of it
 */
export async function copyDatabase(source: Connection, path: string): Promise<void> {
  const partial = partialPath(path);
  try {
    makePrivateFile(partial);
    await backup(source.database, partial, { rate: pagesAtATime });
    reached("copy written");
    const copy = new Connection(partial);
    try {
      // A copy is one file: the journal beside it would be forgotten when the file is moved.
      copy.execute("PRAGMA journal_mode = DELETE");
      checkFile(copy);
      if (JSON.stringify(readFact(copy, "journalHead")) !== JSON.stringify(readFact(source, "journalHead"))) {
        throw new RequestRefused("The register changed while it was copied; do it again.");
      }
    } finally {
      copy.close();
    }
    finishFile(partial, path);
  } catch (error) {
    removeDatabase(partial);
    throw sqliteTrouble(error) ?? diskTrouble(error, path) ?? error;
  }
}

/**
 * Puts a whole copy in the place of the register's content, in one transaction of SQLite's own.
 */
export async function copyInto(source: Connection, registerFile: string): Promise<void> {
  try {
    await backup(source.database, registerFile, { rate: pagesAtATime });
  } catch (error) {
    throw sqliteTrouble(error) ?? error;
  }
}

/**
 * That a file is a register of a schema this program knows, and that SQLite finds its structure sound.
 * @throws RequestRefused with what is wrong
 */
export function checkFile(connection: Connection): void {
  if (applicationOf(connection) !== applicationId) {
    throw new RequestRefused("The file is no register: it does not hold what a register holds.");
  }
  checkSchema(connection);
  checkTables(connection);
  checkStructure(connection, undefined);
}

/** @throws RequestRefused when a newer version of the program wrote the register */
export function checkSchema(connection: Connection): void {
  const schema = schemaOf(connection);
  if (schema <= latestSchema) return;
  throw new RequestRefused(
    `This register was written by a newer version of Counterpoise (schema ${schema}; this version knows up to ${latestSchema}). It was left as it is; open it with the newer version.`,
  );
}

/**
 * That the tables are those of the schema the file says it has; one turned byte in their description would otherwise
 * show itself as a mistake of ours, much later.
 */
export function checkTables(connection: Connection): void {
  const describe = (each: Connection) =>
    JSON.stringify(each.all("SELECT type, name, tbl_name, sql FROM sqlite_schema WHERE sql IS NOT NULL ORDER BY name"));
  const model = new Connection(":memory:");
  try {
    migrate(model, schemaOf(connection));
    if (describe(model) !== describe(connection)) throw damagedStructure();
  } finally {
    model.close();
  }
}

/** @param tables which tables to look at; undefined for the whole file */
export function checkStructure(connection: Connection, tables: readonly string[] | undefined): void {
  const checks = tables === undefined ? ["PRAGMA quick_check(1)"] : tables.map((each) => `PRAGMA quick_check(${each})`);
  const sound = checks.every((check) => Object.values(connection.one(check) ?? {})[0] === "ok");
  if (!sound) throw damagedStructure();
}

export function damagedStructure(): RequestRefused {
  return new RequestRefused("The register's file is damaged. It was left as it is; restore the newest backup.");
}

/** How many bytes the file of a register has. */
export function fileBytes(connection: Connection): number {
  const pages = numberOf(connection.one("PRAGMA page_count") ?? {}, "page_count");
  return pages * numberOf(connection.one("PRAGMA page_size") ?? {}, "page_size");
}
