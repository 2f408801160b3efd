import { bringBackupsUnder, keysUnder } from "./kept-backups.ts";
import { type Protection, protectionIn } from "./keys/bring-under.ts";
import { clearKey } from "./keys/contents.ts";
import { convertSome, endConversion, type Progress } from "./keys/conversion.ts";
import { readFormerKeys } from "./keys/former-keys.ts";
import { finishCleaning, leaveNothingBehind, whereFree } from "./leave-nothing-behind.ts";
import type { Register } from "./register.ts";
import { readFact, removeFact, writeFact } from "./register-facts.ts";
import { actorOf } from "./register-writes.ts";

/**
 * Does what a stop of the machine has left undone: fields on their way to another protection, kept backups that are
 * behind, free pages and a log that hold what was there before, and erasures. Where another window is reading just now,
 * that is left to a later opening.
 */
export function finishWhatWasBrokenOff(register: Register): void {
  if (register.locked || register.readOnlyBecause !== undefined) return;
  if (!register.convertsLater) convertToEnd(register);
  whereFree(() => bringBackups(register));
  whereFree(() => finishCleaning(register.connection));
  whereFree(() => register.finishEarlierErasure());
}

/** Does every step of a conversion that is left. */
export function convertToEnd(register: Register, tell: (progress: Progress) => void = () => undefined): void {
  while (convertStep(register)) {
    const progress = register.conversion;
    if (progress !== undefined) tell(progress);
  }
}

/**
 * Does the next step of a conversion, if one is on its way: some fields, or the end of it. The register can be worked with
 * between two steps.
 * @returns true while more remains
 */
export function convertStep(register: Register): boolean {
  const conversion = readFact(register.connection, "conversion");
  if (conversion === undefined || register.locked || register.readOnlyBecause !== undefined) return false;
  // Before the register itself: broken off in between, nothing lies in the clear under a passphrase.
  if (conversion.to === "passphrase" && conversion.done === 0) bringBackups(register);
  if (convertSome(register.contents, conversion)) return true;
  if (conversion.to === "plain") bringBackups(register);
  // Before anything says that a passphrase protects the register, what lay in the clear leaves its free pages and its log.
  const isClean = conversion.to === "passphrase" && whereFree(() => leaveNothingBehind(register.connection));
  const now = register.circumstances.now();
  const note = () => noteChange(register);
  const dataKey = endConversion(register.contents, conversion, register.dataKey, now, note, isClean);
  register.continueUnder(dataKey);
  if (conversion.to === "layers") bringBackups(register);
  whereFree(() => finishCleaning(register.connection));
  return false;
}

/** Journals that the passphrase changed, within the caller's transaction. */
export function noteChange(register: Register): void {
  const { circumstances, contents } = register;
  contents.journal.append(circumstances.now(), { action: "passphrase changed", ...actorOf(circumstances) }, []);
}

/**
 * Brings every kept backup under the register's protection, where they may be under another one.
 * @param passphrase opens those that are under it with a data key of their own
 */
export function bringBackups(register: Register, passphrase?: Uint8Array): void {
  const { connection } = register;
  const conversion = readFact(connection, "conversion");
  if (conversion === undefined && readFact(connection, "backupsBehind") === undefined) return;
  // Fields first: until then some of them can only be read with the earlier key.
  if (conversion?.to === "layers") return;
  const known = keysOfCopies(register);
  const found = passphrase === undefined ? [] : keysUnder(register.file, known, passphrase);
  const troubles = bringBackupsUnder(register.file, [...known, ...found], targetOf(register));
  register.backupTroubles = troubles;
  connection.transaction(() => {
    if (troubles.length > 0) {
      writeFact(connection, "backupsBehind", { since: register.circumstances.now().toISOString() });
      return;
    }
    removeFact(connection, "backupsBehind");
    if (conversion !== undefined) return;
    removeFact(connection, "formerKeys");
    removeFact(connection, "clearKeys");
  });
}

/** Every data key that a copy of this register may be under. */
export function keysOfCopies(register: Register): readonly Uint8Array[] {
  const conversion = readFact(register.connection, "conversion");
  const clear = conversion === undefined || conversion.to === "layers" ? undefined : clearKey(conversion.dataKey);
  const own = register.dataKey ?? clear;
  const former = readFormerKeys(register.connection, own);
  return own === undefined ? former : [own, ...former];
}

/** What the register is under, or on its way to. */
function targetOf(register: Register): Protection | undefined {
  const conversion = readFact(register.connection, "conversion");
  if (conversion?.to !== "passphrase") return protectionIn(register.connection, register.dataKey);
  return { dataKey: clearKey(conversion.dataKey), wrapped: conversion.protection };
}
