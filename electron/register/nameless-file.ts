import { closeSync, openSync, rmSync } from "node:fs";
import type { ByteSink } from "./byte-source.ts";
import { Connection } from "./connection.ts";
import { diskTrouble, sinkInto } from "./file-sink.ts";
import { makePrivateFile, removeDatabase } from "./register-folder.ts";

/**
 * Lends a database from bytes that must not lie on the disk under a name: the file has lost its name before it holds any
 * of them, and is gone with the program. Windows lets no open file lose its name; there it has one until the work ends.
 * @param path beside the register
 * @param fill writes the bytes of the database
 */
export async function withNamelessDatabase<Result>(
  path: string,
  fill: (sink: ByteSink) => void,
  work: (connection: Connection) => Result | Promise<Result>,
): Promise<Result> {
  const connection = openFilled(path, fill);
  try {
    return await work(connection);
  } finally {
    connection.close();
    removeDatabase(path);
  }
}

function openFilled(path: string, fill: (sink: ByteSink) => void): Connection {
  let connection: Connection | undefined;
  try {
    makePrivateFile(path);
    const file = openSync(path, "r+");
    try {
      // SQLite opens the file at once and reads nothing of it before it is asked to.
      connection = new Connection(path, { readOnly: true });
      if (process.platform !== "win32") rmSync(path);
      fill(sinkInto(file));
    } finally {
      closeSync(file);
    }
    return connection;
  } catch (error) {
    connection?.close();
    removeDatabase(path);
    throw diskTrouble(error, path) ?? error;
  }
}
