import { removeAthleteLines } from "../athlete-lines.ts";
import type { Connection } from "../connection.ts";
import { wrapKey } from "../passphrase-key.ts";
import { readFact, removeFact, writeFact } from "../register-facts.ts";
import { reached } from "../steps.ts";
import { enterPassphrase, leavePassphrase, type Protection, rewrap } from "./bring-under.ts";
import { ContentKeys, nobody } from "./content-keys.ts";
import { type Contents, clearKey, earlierKeyPlace } from "./contents.ts";
import type { Conversion } from "./conversion-schema.ts";
import { encrypt, newKey } from "./encryption.ts";
import { readFormerKeys, writeFormerKeys } from "./former-keys.ts";
import { countFields, firstPlace, rewriteSome } from "./rewrite-fields.ts";

/** How far a conversion has come, in fields. */
export interface Progress {
  readonly done: number;
  readonly total: number;
}

/** Begins to put a register without a passphrase under one; the register has none until every field is written again. */
export function beginPassphrase(contents: Contents, passphrase: Uint8Array): void {
  const dataKey = newKey();
  const protection = wrapKey(dataKey, passphrase);
  const { connection } = contents.store;
  begin(connection, { to: "passphrase", dataKey: base64(dataKey), protection, ...progressOf(contents) });
  dataKey.fill(0);
}

/**
 * Leaves a copy whose fields are all under a protection as one on its way there, within the caller's transaction: it comes
 * into a register that has none, and says that it has one only when nothing of before lies there in the clear.
 */
export function awaitPassphrase(connection: Connection, { dataKey, wrapped }: Protection): void {
  leavePassphrase(connection);
  const place = { table: behindTheLast, after: [] };
  const progress = { place, done: 1, total: 1 };
  writeFact(connection, "conversion", { to: "passphrase", dataKey: base64(dataKey), protection: wrapped, ...progress });
}

/** Begins to take a passphrase away: from its first step on the register has none. */
export function beginPlain(contents: Contents, dataKey: Uint8Array, note: () => void): void {
  const { connection } = contents.store;
  begin(connection, { to: "plain", dataKey: base64(dataKey), ...progressOf(contents) }, () => {
    note();
    leavePassphrase(connection);
  });
}

/**
 * Begins to bring a register of a schema before 4 from fields under the data key itself to content keys of its people.
 * @param earlier the data key of before; a new one takes its place, so that no earlier passphrase opens it any more
 * @returns the data key from now on
 */
export function beginLayers(contents: Contents, earlier: Uint8Array, passphrase: Uint8Array, now: Date): Uint8Array {
  const { connection } = contents.store;
  const dataKey = newKey();
  const wrapped = wrapKey(dataKey, passphrase);
  const earlierKey = base64(encrypt(dataKey, earlier, earlierKeyPlace));
  begin(connection, { to: "layers", earlierKey, ...progressOf(contents) }, () => {
    const keys = new ContentKeys(connection, contents.id, dataKey);
    keys.keyOf(nobody);
    keys.forget();
    enterPassphrase(connection, { dataKey, wrapped });
    writeFormerKeys(connection, [earlier], dataKey);
    writeFact(connection, "backupsBehind", { since: now.toISOString() });
  });
  return dataKey;
}

function begin(connection: Connection, conversion: Conversion, also: () => void = () => undefined): void {
  connection.transaction(() => {
    also();
    writeFact(connection, "conversion", conversion);
    // They are made anew from the records, in today's form.
    removeAthleteLines(connection);
  });
  reached("conversion begun");
}

function progressOf(contents: Contents) {
  return { place: firstPlace, done: 0, total: countFields(contents) };
}

/** Fields written again in one transaction: a step that takes no longer than a glance. */
const fieldsAtATime = 200;
const behindTheLast = 1000;

/**
 * Writes the next fields again, in a transaction of its own.
 * @returns false when all of them are in their new form; then the conversion can be ended
 */
export function convertSome(contents: Contents, conversion: Conversion): boolean {
  const { connection } = contents.store;
  return connection.transaction(() => {
    const { place, rewritten } = rewriteSome(contents, conversion.place, fieldsAtATime);
    // Behind the last table there is nothing to find again after a stop.
    const next = place ?? { table: behindTheLast, after: [] };
    writeFact(connection, "conversion", { ...conversion, place: next, done: conversion.done + rewritten });
    reached("fields written again");
    return place !== undefined;
  });
}

/**
 * Ends a conversion whose fields are all written again.
 * @param isClean nothing of before lies in free pages
 * @returns the data key of what it came to; none without passphrase
 */
export function endConversion(
  { store }: Contents,
  conversion: Conversion,
  dataKey: Uint8Array | undefined,
  now: Date,
  note: () => void,
  isClean: boolean,
): Uint8Array | undefined {
  const { connection } = store;
  const since = { since: now.toISOString() };
  const own = conversion.to === "passphrase" ? clearKey(conversion.dataKey) : dataKey;
  const formerKeys = conversion.to === "plain" ? readFormerKeys(connection, clearKey(conversion.dataKey)) : [];
  connection.transaction(() => {
    if (conversion.to === "passphrase" && own !== undefined) {
      note();
      enterPassphrase(connection, { dataKey: own, wrapped: conversion.protection });
      writeFact(connection, "dataKeyDue", since);
    }
    if (conversion.to === "plain") {
      connection.execute("DELETE FROM contentKeys");
      removeFact(connection, "formerKeys");
      // Kept backups that could not be written again stay under their keys: a later opening tries again.
      if (readFact(connection, "backupsBehind") !== undefined) {
        const key = clearKey(conversion.dataKey);
        writeFact(connection, "clearKeys", { keys: [key, ...formerKeys].map(base64) });
      }
    }
    removeFact(connection, "conversion");
    writeFact(connection, "unfinishedCleaning", { ...since, ...(isClean && { onlyLog: true }) });
  });
  reached("conversion ended");
  return conversion.to === "plain" ? undefined : own;
}

/** Puts a new data key in the place of the one there is, in one transaction: content keys are wrapped again. */
export function changeDataKey(
  { store }: Contents,
  old: Uint8Array,
  passphrase: Uint8Array,
  now: Date,
  note: () => void,
): Uint8Array {
  const { connection } = store;
  const dataKey = newKey();
  const wrapped = wrapKey(dataKey, passphrase);
  const since = now.toISOString();
  connection.transaction(() => {
    note();
    const former = readFormerKeys(connection, old);
    rewrap(connection, old, { dataKey, wrapped });
    writeFormerKeys(connection, [old, ...former], dataKey);
    removeFact(connection, "dataKeyDue");
    removeFact(connection, "clearKeys");
    writeFact(connection, "backupsBehind", { since });
    // The keys as they were wrapped before stand in the log alone: rows that are written over are zeroed.
    if (readFact(connection, "unfinishedCleaning") === undefined) {
      writeFact(connection, "unfinishedCleaning", { since, onlyLog: true });
    }
  });
  reached("keys wrapped again");
  return dataKey;
}

function base64(bytes: Uint8Array): string {
  return Buffer.from(bytes).toString("base64");
}
