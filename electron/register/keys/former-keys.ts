import type { Connection } from "../connection.ts";
import { readFact, registerId, writeFact } from "../register-facts.ts";
import { clearKey } from "./contents.ts";
import { decrypt, encrypt } from "./encryption.ts";

/** Most earlier data keys that are kept. */
const mostKept = 100;

/**
 * The data keys that a register's kept backups can be under, besides its own: earlier ones, wrapped by today's, and in a
 * register without a passphrase those that lie there in the clear.
 */
export function readFormerKeys(connection: Connection, dataKey: Uint8Array | undefined): readonly Uint8Array[] {
  const clear = readFact(connection, "clearKeys")?.keys.map(clearKey) ?? [];
  if (dataKey === undefined) return clear;
  const wrapped = readFact(connection, "formerKeys")?.wrapped ?? [];
  const place = placeOf(connection);
  const former = wrapped.flatMap((each) => decrypt(dataKey, Buffer.from(each, "base64"), place) ?? []);
  return [...former, ...clear];
}

/** Keeps earlier data keys under today's, within the caller's transaction. */
export function writeFormerKeys(connection: Connection, keys: readonly Uint8Array[], dataKey: Uint8Array): void {
  const place = placeOf(connection);
  const wrapped = keys.slice(0, mostKept).map((key) => Buffer.from(encrypt(dataKey, key, place)).toString("base64"));
  writeFact(connection, "formerKeys", { wrapped });
}

function placeOf(connection: Connection): string {
  return JSON.stringify([registerId(connection), "formerKeys"]);
}
