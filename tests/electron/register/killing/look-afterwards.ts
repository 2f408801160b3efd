import { existsSync, readdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { withBackup } from "../../../../electron/register/backups.ts";
import { openRegister } from "../../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../../electron/register/register.ts";
import { readFact } from "../../../../electron/register/register-facts.ts";
import { keptBackups } from "../../../../electron/register/register-folder.ts";
import { filesBelow, testCircumstances } from "../register-world.ts";
import { inTheClear, openedBy, problemsIn, problemsOf, protectionAt } from "./look-at-files.ts";
import { toErase } from "./make-beginnings.ts";
import { type Line, type Operation, type Places, words } from "./operations.ts";
import type { Signs } from "./signs.ts";

const unfinishedFacts = [
  "conversion",
  "backupsBehind",
  "unfinishedCleaning",
  "unfinishedErasure",
  "clearKeys",
  "formerKeys",
  "dataKeyDue",
] as const;

/** What a stop left, looked at before anything is opened. */
export interface LeftBehind {
  /** What opens the register now; undefined for no passphrase. */
  readonly passphrase: string | undefined;
  readonly faults: readonly string[];
}

export function lookBefore(operation: Operation, { register }: Places, signs: Signs): LeftBehind {
  const protection = protectionAt(register);
  if (protection === undefined) {
    const mayBePlain = operation.before === undefined || operation.after === undefined;
    return { passphrase: undefined, faults: mayBePlain ? [] : ["the register has lost its passphrase"] };
  }
  const faults = [...inTheClear(register, [...signs.words, ...signs.recordings])];
  const candidates = new Set([operation.before, operation.after].filter((each) => each !== undefined));
  const opening = openedBy(protection, [...candidates]);
  if (opening.length !== 1) faults.push(`${opening.length} passphrases open the register`);
  return { passphrase: opening[0], faults };
}

/** Opens the register and looks whether all of its promises hold; what was broken off is finished by then. */
export async function lookAfterwards(
  operation: Operation,
  { register: file, elsewhere }: Places,
  signs: Signs,
  found: LeftBehind,
  lines: readonly Line[],
): Promise<readonly string[]> {
  const faults = [...found.faults];
  const first = await open(file, found.passphrase);
  const isEncrypted = first.encrypted;
  first.close();
  faults.push(...leftovers(file));
  // Setting a passphrase for the first time is finished under the one that was to come.
  const passphrase = found.passphrase ?? (isEncrypted ? operation.after : undefined);
  // A data key that lay in the clear is changed when the passphrase is next given.
  const register = await open(file, passphrase);
  try {
    for (const fact of unfinishedFacts) {
      if (readFact(register.connection, fact) !== undefined) faults.push(`the fact ${fact} is still there`);
    }
    faults.push(...register.backupTroubles.map(({ path, because }) => `${path}: ${because}`));
    const { problems, isKeyed } = register.verify();
    faults.push(...problems);
    if (isKeyed !== register.encrypted) faults.push("the journal's head is not keyed");
    if (register.encrypted !== (passphrase !== undefined)) faults.push("it is not protected as its passphrase says");
    faults.push(...contentFaults(operation, register, signs, lines));
  } finally {
    register.close();
  }
  if (passphrase !== undefined) faults.push(...inTheClear(file, [...signs.words, ...signs.recordings]));
  const kept = keptBackups(file);
  if (kept.length < signs.keptBackups) faults.push("a kept backup is missing");
  faults.push(...kept.flatMap((path) => problemsOf(path, passphrase)));
  faults.push(...(await copyFaults(operation, elsewhere, lines, passphrase)));
  return faults;
}

function open(file: string, passphrase: string | undefined): Promise<Register> {
  return openRegister(file, {
    circumstances: testCircumstances("2026-12-01T08:00:00Z"),
    ...(passphrase !== undefined && { passphrase: passphraseBytes(passphrase) }),
  });
}

function leftovers(file: string): readonly string[] {
  return filesBelow(dirname(file))
    .map(({ path }) => path.slice(dirname(file).length + 1))
    .filter((name) => /sqlite-passing|sqlite-restoring|\.part/.test(name))
    .map((name) => `${name} is still there`);
}

function contentFaults(operation: Operation, register: Register, signs: Signs, lines: readonly Line[]): string[] {
  const faults: string[] = [];
  const { reads } = register;
  const codes = reads.athletes().map(({ code }) => code);
  const here = codes.filter((code) => !code?.startsWith("K-")).toSorted();
  const isDone = lines.some(({ what }) => what === "done");
  const isAsBefore = here.join() === signs.codes.join();
  const isAsRestored = signs.restoredCodes !== undefined && here.join() === signs.restoredCodes.join();
  if (!(isAsBefore && !(isDone && signs.restoredCodes !== undefined)) && !isAsRestored)
    faults.push(`the athletes are ${here.join()}`);
  for (const line of lines) {
    if (line.what === "imported") {
      const sums = reads.sessionInput(line.session)?.files.map(({ sha256 }) => sha256) ?? [];
      if (sums.toSorted().join() !== line.sums.toSorted().join()) faults.push("an acknowledged import is missing");
    } else if (line.what === "noted") {
      const note = reads.athletes().map(({ id }) => Number(reads.record("athletes", id)?.content.note ?? 0));
      if (Math.max(...note) < line.note)
        faults.push(`note ${line.note} was acknowledged, and ${Math.max(...note)} is there`);
    } else if (line.what === "done") {
      if (operation.after === undefined && register.encrypted)
        faults.push("it is under a passphrase that was taken away");
      if (operation.after !== undefined && !register.encrypted) faults.push("an acknowledged passphrase is not there");
    }
  }
  if (operation.work === "erase") faults.push(...erasureFaults(register, signs, isDone));
  return faults;
}

/** Either the person lies in the bin as before, or is nowhere. */
function erasureFaults(register: Register, signs: Signs, isDone: boolean): readonly string[] {
  const isThere = register.reads.bin().some(({ kind }) => kind === "athletes");
  if (isThere) return isDone ? ["an erased person is there again"] : [];
  const { name, code } = toErase;
  return inTheClear(register.file, [name, code, ...signs.ofErased]);
}

async function copyFaults(
  operation: Operation,
  elsewhere: string,
  lines: readonly Line[],
  passphrase: string | undefined,
): Promise<readonly string[]> {
  const told = lines.flatMap((line) => (line.what === "copied" ? [line.path] : []));
  const faults = told.filter((path) => !existsSync(path)).map((path) => `the copy ${path} is missing`);
  const isWhole = (name: string) => name.startsWith("copy-") && name.endsWith(".sqlite");
  for (const path of readdirSync(elsewhere)
    .filter(isWhole)
    .map((name) => join(elsewhere, name))) {
    if (operation.work !== "back up sealed") faults.push(...problemsOf(path, passphrase));
    else {
      const sealed = passphraseBytes(words.sealed);
      const beside = join(elsewhere, "nothing.sqlite");
      faults.push(...(await withBackup(path, sealed, beside, (copy) => problemsIn(copy, passphrase))));
    }
  }
  return faults;
}
