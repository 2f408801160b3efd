import { randomBytes } from "node:crypto";
import { sameBytes, sha256Of } from "../checksum.ts";
import { bytesOf, type Connection, type Row, textOf } from "../connection.ts";
import { copyOfSecret, decrypt, encrypt, keyBytes, newKey } from "./encryption.ts";
import { locked } from "./locked.ts";

/** Whose content key is meant by what belongs to nobody. */
export const nobody = "";

/** The content keys of a register, one for each person, as they lie in the file: wrapped by the data key. */
export class ContentKeys {
  readonly #connection: Connection;
  readonly #registerId: string;
  #dataKey: Uint8Array | undefined;
  /** Unwrapped ones by their identifiers. Whose key it is is asked of the file each time: an action may be taken back. */
  readonly #known = new Map<string, Uint8Array>();

  constructor(connection: Connection, registerId: string, dataKey: Uint8Array) {
    this.#connection = connection;
    this.#registerId = registerId;
    this.#dataKey = copyOfSecret(dataKey);
  }

  /** Makes a person's content key where there is none yet, within the caller's transaction. */
  keyOf(person: string): { readonly keyId: string; readonly key: ContentKey } {
    const row = this.#connection.one("SELECT keyId FROM contentKeys WHERE person = ?", person);
    const keyId = row === undefined ? this.#make(person) : textOf(row, "keyId");
    const key = this.key(keyId);
    if (key === undefined) throw new Error(`The content key ${keyId} cannot be unwrapped.`);
    return { keyId, key };
  }

  /** @returns undefined where there is no such key, or it is wrapped by another data key */
  key(keyId: string): ContentKey | undefined {
    const dataKey = this.#usableDataKey();
    let key = this.#known.get(keyId);
    if (key === undefined) {
      const row = this.#connection.one("SELECT * FROM contentKeys WHERE keyId = ?", keyId);
      key = row && decrypt(dataKey, bytesOf(row, "wrapped"), this.#placeOf(row));
      if (key === undefined || key.byteLength !== keyBytes) return undefined;
      this.#known.set(keyId, key);
    }
    const bytes = key;
    return {
      encrypt: (plain, place) => encrypt(bytes, plain, place),
      decrypt: (stored, place) => decrypt(bytes, stored, place),
    };
  }

  /** The data key is the one that wraps these keys. */
  opensAny(): boolean {
    const row = this.#connection.one("SELECT keyId FROM contentKeys LIMIT 1");
    return row !== undefined && this.key(textOf(row, "keyId")) !== undefined;
  }

  /** Wraps every key by another data key, within the caller's transaction. */
  rewrapUnder(dataKey: Uint8Array): void {
    const old = this.#usableDataKey();
    for (const row of this.#connection.all("SELECT * FROM contentKeys")) {
      const key = decrypt(old, bytesOf(row, "wrapped"), this.#placeOf(row));
      if (key === undefined) throw new Error(`The content key ${textOf(row, "keyId")} cannot be unwrapped.`);
      this.#write(textOf(row, "person"), textOf(row, "keyId"), encrypt(dataKey, key, this.#placeOf(row)));
      key.fill(0);
    }
  }

  /** After this nothing of it can be read or written. */
  forget(): void {
    this.#dataKey?.fill(0);
    this.#dataKey = undefined;
    for (const key of this.#known.values()) key.fill(0);
    this.#known.clear();
  }

  #usableDataKey(): Uint8Array {
    if (this.#dataKey === undefined) throw locked();
    return this.#dataKey;
  }

  #make(person: string): string {
    const keyId = randomBytes(16).toString("hex");
    const key = newKey();
    const wrapped = encrypt(this.#usableDataKey(), key, contentKeyPlace(this.#registerId, person, keyId));
    this.#write(person, keyId, wrapped);
    this.#known.set(keyId, key);
    return keyId;
  }

  #write(person: string, keyId: string, wrapped: Uint8Array): void {
    const checksum = sha256Of(contentKeyPlace(this.#registerId, person, keyId), wrapped);
    this.#connection.run("INSERT OR REPLACE INTO contentKeys VALUES (?, ?, ?, ?)", person, keyId, wrapped, checksum);
  }

  #placeOf(row: Row): string {
    return contentKeyPlace(this.#registerId, textOf(row, "person"), textOf(row, "keyId"));
  }
}

/** What can be done with a content key; the key itself is not given out. */
export interface ContentKey {
  encrypt(plain: Uint8Array, place: string): Uint8Array;
  decrypt(stored: Uint8Array, place: string): Uint8Array | undefined;
}

function contentKeyPlace(registerId: string, person: string, keyId: string): string {
  return JSON.stringify([registerId, "contentKeys", person, keyId]);
}

/** True when a row of the table fits its checksum; needs no key. */
export function contentKeyFits(registerId: string, row: Row): boolean {
  const place = contentKeyPlace(registerId, textOf(row, "person"), textOf(row, "keyId"));
  return sameBytes(sha256Of(place, bytesOf(row, "wrapped")), bytesOf(row, "checksum"));
}

/** The register has content keys: its fields lie in layers, or are on their way there or back. */
export function hasContentKeys(connection: Connection): boolean {
  const hasTable = connection.one("SELECT name FROM sqlite_schema WHERE name = 'contentKeys'") !== undefined;
  return hasTable && connection.one("SELECT person FROM contentKeys LIMIT 1") !== undefined;
}

/** Identifiers of the content keys of some people; none where there are no layers. */
export function contentKeyIds(connection: Connection, people: Iterable<string>): readonly string[] {
  if (!hasContentKeys(connection)) return [];
  return [...people].flatMap((person) => {
    const row = connection.one("SELECT keyId FROM contentKeys WHERE person = ?", person);
    return row === undefined ? [] : [textOf(row, "keyId")];
  });
}

/** Takes the content keys of some people out of the file for good, within the caller's transaction. */
export function destroyContentKeys(connection: Connection, people: Iterable<string>): void {
  if (!hasContentKeys(connection)) return;
  for (const person of people) connection.run("DELETE FROM contentKeys WHERE person = ?", person);
}
