import { Connection } from "./connection.ts";
import { migrate, schemaOf } from "./migrations.ts";

/** SQLite's word for a database of its own that no name leads to: what it holds is gone with the program. */
const withoutName = "";

/**
 * Copies what a register or a backup holds, row by row, into a database to work on that lies under no name, so that a stop
 * leaves nothing of it, least of all in the clear beside a register under a passphrase.
 * @returns the copy, of the same schema; whoever asked closes it
 */
export function workingCopyOf(source: Connection): Connection {
  const copy = new Connection(withoutName);
  try {
    migrate(copy, schemaOf(source));
    copy.transaction(() => copyRows(source, copy));
    copy.execute("PRAGMA secure_delete = ON; PRAGMA foreign_keys = ON;");
    return copy;
  } catch (error) {
    copy.close();
    throw error;
  }
}

function copyRows(source: Connection, copy: Connection): void {
  copy.execute("PRAGMA defer_foreign_keys = ON");
  for (const { name } of copy.all("SELECT name FROM sqlite_schema WHERE type = 'table'")) {
    for (const row of source.each(`SELECT * FROM ${name}`)) {
      const values = Object.values(row);
      copy.run(`INSERT INTO ${name} VALUES (${values.map(() => "?").join(", ")})`, ...values);
    }
  }
}
