import { createHmac, timingSafeEqual } from "node:crypto";
import type { Connection } from "../connection.ts";
import { readFact, writeFact } from "../register-facts.ts";
import { decrypt, encrypt, newKey } from "./encryption.ts";

/**
 * The key that seals the journal's head, wrapped by the data key. It is drawn once and survives changes of the
 * passphrase, so that who holds the file without the passphrase cannot take entries off the end of the journal.
 */
export function readJournalKey(
  connection: Connection,
  registerId: string,
  dataKey: Uint8Array,
): Uint8Array | undefined {
  const stored = readFact(connection, "journalKey");
  return stored && decrypt(dataKey, Buffer.from(stored.wrapped, "base64"), journalKeyPlace(registerId));
}

/** Draws one, within the caller's transaction. */
export function makeJournalKey(connection: Connection, registerId: string, dataKey: Uint8Array): Uint8Array {
  const key = newKey();
  wrapJournalKey(connection, registerId, key, dataKey);
  return key;
}

export function wrapJournalKey(connection: Connection, registerId: string, key: Uint8Array, dataKey: Uint8Array): void {
  const wrapped = Buffer.from(encrypt(dataKey, key, journalKeyPlace(registerId))).toString("base64");
  writeFact(connection, "journalKey", { wrapped });
}

function journalKeyPlace(registerId: string): string {
  return JSON.stringify([registerId, "journalKey"]);
}

/** HMAC-SHA256 over the register, the place of the last entry and its hash; in hexadecimal digits. */
export function headSeal(key: Uint8Array, registerId: string, sequence: number, hash: string): string {
  return createHmac("sha256", key)
    .update(JSON.stringify(["journal head", registerId, sequence, hash]))
    .digest("hex");
}

interface Head {
  readonly sequence: number;
  readonly hash: string;
  readonly seal?: string | undefined;
}

/** The head is the one that was sealed last by who had the key. */
export function sealFits(key: Uint8Array, registerId: string, { sequence, hash, seal }: Head): boolean {
  const expected = Buffer.from(headSeal(key, registerId, sequence, hash), "hex");
  const found = Buffer.from(seal ?? "", "hex");
  return found.byteLength === expected.byteLength && timingSafeEqual(found, expected);
}

/** Seals the head as it stands, within the caller's transaction: when a journal comes under a key. */
export function sealHead(connection: Connection, registerId: string, key: Uint8Array | undefined): void {
  const head = readFact(connection, "journalHead");
  if (head === undefined) return;
  const { sequence, hash } = head;
  const seal = key && headSeal(key, registerId, sequence, hash);
  writeFact(connection, "journalHead", { sequence, hash, ...(seal !== undefined && { seal }) });
}
