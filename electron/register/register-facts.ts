import { randomUUID } from "node:crypto";
import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { storedRowLimits } from "../bounded-json/limits.ts";
import { readJson } from "../bounded-json/read-json.ts";
import { RequestRefused } from "../refusals/request-refused.ts";
import { sameBytes, sha256Of } from "./checksum.ts";
import { bytesOf, type Connection } from "./connection.ts";
import { copyCheckSchema } from "./copies/check-schema.ts";
import { conversionSchema } from "./keys/conversion-schema.ts";
import { wrappedKeySchema } from "./passphrase-key.ts";

const identitySchema = z.strictObject({ id: z.uuid(), createdAt: z.iso.datetime() });
/** The seal stands there under a passphrase. */
const headSchema = z.strictObject({ sequence: z.int().min(0), hash: z.hex(), seal: z.hex().optional() });
const keySchema = z.strictObject({ kind: z.string(), id: z.string() });

/** Facts about the register itself, in the clear: none of them is about a person. */
const factSchemas = {
  /** Drawn once; binds encrypted fields to their register. */
  identity: identitySchema,
  /** Present while a passphrase protects the register. */
  protection: wrappedKeySchema,
  /** The last entry of the journal. */
  journalHead: headSchema,
  /** The last entry of the journal when the lines of the list of athletes were written. */
  athleteLines: z.strictObject({ journalHash: z.hex() }),
  /** Seals the journal's head; wrapped by the data key. Present while a passphrase protects the register. */
  journalKey: z.strictObject({ wrapped: z.base64() }),
  /** Present while fields are on their way from one protection to another. */
  conversion: conversionSchema,
  /** Earlier data keys, wrapped by today's, while a kept backup may still be under one of them. */
  formerKeys: z.strictObject({ wrapped: z.array(z.base64()).max(100) }),
  /** Data keys of kept backups that came under a passphrase before the register did, and only while it has none. */
  clearKeys: z.strictObject({ keys: z.array(z.base64()).max(100) }),
  /** Present while kept backups may be under another protection than the register. */
  backupsBehind: z.strictObject({ since: z.iso.datetime() }),
  /** The data key lay in the clear while a passphrase was set: a new one is due when the passphrase is given. */
  dataKeyDue: z.strictObject({ since: z.iso.datetime() }),
  /** Present while free pages or the write-ahead log may hold what was written again under another protection. */
  unfinishedCleaning: z.strictObject({ since: z.iso.datetime(), onlyLog: z.boolean().optional() }),
  /** When kept backups were last checked and what was found, by the names of their files. */
  checkedBackups: z.strictObject({
    checks: z
      .array(z.strictObject({ name: z.string(), verifiedAt: z.iso.datetime(), found: copyCheckSchema }))
      .max(1000),
  }),
  /** Records erased from the register but perhaps not yet from its backups. */
  unfinishedErasure: z.strictObject({ records: z.array(keySchema) }),
} as const;

type FactName = keyof typeof factSchemas;
export type Fact<Name extends FactName> = SchemaType<(typeof factSchemas)[Name]>;

/** @throws RequestRefused when the fact was altered by something else than this program */
export function readFact<Name extends FactName>(connection: Connection, name: Name): Fact<Name> | undefined {
  const row = connection.one("SELECT value, checksum FROM facts WHERE name = ?", name);
  if (row === undefined) return undefined;
  const value = bytesOf(row, "value");
  if (!sameBytes(sha256Of(name, value), bytesOf(row, "checksum"))) {
    throw damagedFact();
  }
  const read = factSchemas[name].safeParse(jsonIn(value));
  if (!read.success) throw damagedFact();
  return read.data as Fact<Name>;
}

function jsonIn(value: Uint8Array): unknown {
  try {
    return readJson(value, storedRowLimits);
  } catch {
    throw damagedFact();
  }
}

function damagedFact(): RequestRefused {
  return new RequestRefused("The register's own description is damaged. Restore the newest backup.");
}

export function writeFact<Name extends FactName>(connection: Connection, name: Name, fact: Fact<Name>): void {
  const value = Buffer.from(JSON.stringify(fact));
  connection.run("INSERT OR REPLACE INTO facts VALUES (?, ?, ?)", name, value, sha256Of(name, value));
}

export function removeFact(connection: Connection, name: FactName): void {
  connection.run("DELETE FROM facts WHERE name = ?", name);
}

/** Gives a new register its identity. */
export function writeIdentity(connection: Connection, now: Date): void {
  writeFact(connection, "identity", { id: randomUUID(), createdAt: now.toISOString() });
}

/** @throws RequestRefused when there is none, so that no field is ever read without it */
export function registerId(connection: Connection): string {
  const identity = readFact(connection, "identity");
  if (identity === undefined)
    throw new RequestRefused("The register has lost its identity. Restore the newest backup.");
  return identity.id;
}
