import type { Connection } from "./connection.ts";
import { numberOf } from "./connection.ts";

/** One step from a schema to the next. Once released, a step is never edited: what comes later is a new step. */
export interface Migration {
  readonly schema: number;
  readonly name: string;
  readonly sql: string;
}

/** A table of records: references, the bin, what the record says, and a checksum over all of it. */
function recordTable(table: string, references: readonly string[]): string {
  const columns = references.map((each) => `${each},`).join("\n  ");
  return `CREATE TABLE ${table} (
  id TEXT PRIMARY KEY,
  ${columns}
  binned INTEGER NOT NULL CHECK (binned IN (0, 1)),
  content BLOB NOT NULL,
  checksum BLOB NOT NULL
) STRICT;`;
}

function indexed(table: string, column: string): string {
  return `CREATE INDEX ${table}_${column} ON ${table} (${column});`;
}

export const migrations: readonly Migration[] = [
  {
    schema: 1,
    name: "people, sessions, recordings and the journal",
    sql: [
      "CREATE TABLE facts (name TEXT PRIMARY KEY, value BLOB NOT NULL, checksum BLOB NOT NULL) STRICT;",
      recordTable("athletes", []),
      recordTable("protocols", []),
      recordTable("settingsDocuments", []),
      recordTable("injuries", ["athlete TEXT NOT NULL REFERENCES athletes"]),
      recordTable("operations", ["athlete TEXT NOT NULL REFERENCES athletes", "injury TEXT REFERENCES injuries"]),
      recordTable("sessions", ["athlete TEXT REFERENCES athletes", "protocol TEXT REFERENCES protocols"]),
      recordTable("recordings", ["session TEXT NOT NULL REFERENCES sessions"]),
      `CREATE TABLE recordingBytes (
  recording TEXT PRIMARY KEY REFERENCES recordings,
  bytes BLOB NOT NULL,
  checksum BLOB NOT NULL
) STRICT;`,
      recordTable("trials", ["recording TEXT NOT NULL REFERENCES recordings"]),
      recordTable("enteredFindings", ["athlete TEXT NOT NULL REFERENCES athletes", "session TEXT REFERENCES sessions"]),
      recordTable("consents", ["athlete TEXT NOT NULL REFERENCES athletes"]),
      recordTable("decisions", ["athlete TEXT NOT NULL REFERENCES athletes", "session TEXT REFERENCES sessions"]),
      indexed("injuries", "athlete"),
      indexed("operations", "athlete"),
      indexed("sessions", "athlete"),
      indexed("recordings", "session"),
      indexed("trials", "recording"),
      indexed("enteredFindings", "athlete"),
      indexed("consents", "athlete"),
      indexed("decisions", "athlete"),
      `CREATE TABLE journal (
  sequence INTEGER PRIMARY KEY,
  at TEXT NOT NULL,
  previous BLOB NOT NULL,
  hash BLOB NOT NULL
) STRICT;`,
      `CREATE TABLE journalParts (
  sequence INTEGER NOT NULL REFERENCES journal,
  part INTEGER NOT NULL,
  record TEXT NOT NULL,
  digest BLOB NOT NULL,
  PRIMARY KEY (sequence, part)
) STRICT, WITHOUT ROWID;`,
      "CREATE INDEX journalParts_record ON journalParts (record);",
      `CREATE TABLE journalContents (
  sequence INTEGER NOT NULL,
  part INTEGER NOT NULL,
  content BLOB NOT NULL,
  PRIMARY KEY (sequence, part),
  FOREIGN KEY (sequence, part) REFERENCES journalParts
) STRICT, WITHOUT ROWID;`,
    ].join("\n"),
  },
  {
    schema: 2,
    name: "copies kept elsewhere, so that erasing can name them",
    sql: [
      recordTable("copies", ["athlete TEXT REFERENCES athletes"]),
      indexed("copies", "athlete"),
      indexed("operations", "injury"),
    ].join("\n"),
  },
  {
    schema: 3,
    name: "the list of athletes, so that opening need not read every session",
    sql: `CREATE TABLE athleteLines (
  athlete TEXT PRIMARY KEY REFERENCES athletes,
  content BLOB NOT NULL,
  checksum BLOB NOT NULL
) STRICT;`,
  },
  {
    schema: 4,
    name: "content keys, one for each person, so that erasing a person destroys the key",
    sql: `CREATE TABLE contentKeys (
  person TEXT PRIMARY KEY,
  keyId TEXT NOT NULL UNIQUE,
  wrapped BLOB NOT NULL,
  checksum BLOB NOT NULL
) STRICT;`,
  },
];

/** The schema this version of the program reads and writes. */
export const latestSchema = migrations.length;

/** SQLite's own place for the kind of file: the letters "CpRg". */
export const applicationId = 0x43_70_52_67;

export function schemaOf(connection: Connection): number {
  return numberOf(connection.one("PRAGMA user_version") ?? {}, "user_version");
}

export function applicationOf(connection: Connection): number {
  return numberOf(connection.one("PRAGMA application_id") ?? {}, "application_id");
}

/** Takes a register from its schema to a later one, each step whole or not at all. */
export function migrate(connection: Connection, upTo: number = latestSchema): void {
  for (const { schema, sql } of migrations.slice(schemaOf(connection), upTo)) {
    connection.transaction(() => {
      connection.execute(sql);
      connection.execute(`PRAGMA application_id = ${applicationId}; PRAGMA user_version = ${schema};`);
    });
  }
}
