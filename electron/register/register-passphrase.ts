import { RequestRefused, telling } from "../refusals/request-refused.ts";
import { beginPassphrase, beginPlain, changeDataKey, type Progress } from "./keys/conversion.ts";
import { copyOfSecret } from "./keys/encryption.ts";
import { finishCleaning } from "./leave-nothing-behind.ts";
import type { Register } from "./register.ts";
import { readFact } from "./register-facts.ts";
import { bringBackups, convertStep, convertToEnd, noteChange } from "./unfinished.ts";

/** A passphrase shorter than this is guessed too soon. */
const fewestLetters = 8;

/**
 * Puts the register and the backups it keeps under a passphrase, or under another one. Where there was none, every field
 * is written again and what lay there before is taken out of free pages and the log; else a new data key takes the place
 * of the one there was, which takes seconds. Broken off at any step, it is finished when the register is next opened.
 * Kept backups that could not be brought along are in `register.backupTroubles`.
 */
export function setPassphrase(register: Register, passphrase: Uint8Array, tell: Tell = () => undefined): void {
  for (const progress of settingPassphrase(register, passphrase)) tell(progress);
}

/** Takes the passphrase away from the register and the backups it keeps. */
export function removePassphrase(register: Register, tell: Tell = () => undefined): void {
  for (const progress of removingPassphrase(register)) tell(progress);
}

type Tell = (progress: Progress) => void;

/** The same step by step: the register can be worked with in between. */
export function* settingPassphrase(register: Register, typed: Uint8Array): Generator<Progress> {
  register.requireWritable();
  // Who asked overwrites what was typed when the answer is there, which may be before the last step.
  const passphrase = copyOfSecret(typed);
  try {
    yield* setting(register, passphrase);
  } catch (error) {
    throw telling(error, whatIsTrue(register));
  } finally {
    passphrase.fill(0);
  }
}

/** Where work on the protection was broken off: what protects the register now, and what happens next. */
function whatIsTrue(register: Register): string {
  const conversion = readFact(register.connection, "conversion");
  if (conversion?.to === "passphrase") {
    return "The register has no passphrase yet: the next opening goes on with it, and puts it under this one.";
  }
  if (conversion?.to === "plain") {
    return "The register has no passphrase any more, and whoever has the file can read it: the next opening goes on with writing it in the clear.";
  }
  if (readFact(register.connection, "unfinishedCleaning") !== undefined) {
    return register.encrypted
      ? "The register is under the passphrase, but its file still holds what was there before: the next opening goes on with cleaning it."
      : "The register has no passphrase any more: the next opening goes on with cleaning its file.";
  }
  return "Nothing of this was written.";
}

function* setting(register: Register, passphrase: Uint8Array): Generator<Progress> {
  // While it is locked nobody changes what protects it.
  void register.contents;
  if (letters(passphrase) < fewestLetters) {
    throw new RequestRefused(`A passphrase needs at least ${fewestLetters} letters; nothing was changed.`);
  }
  convertToEnd(register);
  const isFirst = !register.encrypted;
  if (isFirst) {
    beginPassphrase(register.contents, passphrase);
    register.continueUnder(undefined);
    bringBackups(register, passphrase);
    yield* converting(register);
  }
  // The first data key lay in the clear while fields were written again: then it is changed at once.
  const { dataKey } = register;
  if (dataKey === undefined) throw new RequestRefused("The register was locked meanwhile; unlocking goes on with it.");
  const note = () => {
    if (!isFirst) noteChange(register);
  };
  register.continueUnder(changeDataKey(register.contents, dataKey, passphrase, register.circumstances.now(), note));
  bringBackups(register, passphrase);
  finishCleaning(register.connection);
}

/** The same step by step. */
export function* removingPassphrase(register: Register): Generator<Progress> {
  register.requireWritable();
  try {
    yield* removing(register);
  } catch (error) {
    throw telling(error, whatIsTrue(register));
  }
}

function* removing(register: Register): Generator<Progress> {
  void register.contents;
  convertToEnd(register);
  const { dataKey } = register;
  if (dataKey === undefined) throw new RequestRefused("The register has no passphrase.");
  beginPlain(register.contents, dataKey, () => noteChange(register));
  register.continueUnder(undefined);
  yield* converting(register);
  finishCleaning(register.connection);
}

function* converting(register: Register): Generator<Progress> {
  while (convertStep(register)) {
    const progress = register.conversion;
    if (progress !== undefined) yield progress;
  }
}

/** Of UTF-8: every byte but those that continue a letter. */
function letters(passphrase: Uint8Array): number {
  return passphrase.reduce((count, byte) => ((byte & 0xc0) === 0x80 ? count : count + 1), 0);
}
