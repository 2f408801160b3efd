import { copyFileSync, cpSync, mkdirSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { keepDailyBackup } from "../../../electron/register/backups.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { readFact, writeFact } from "../../../electron/register/register-facts.ts";
import { backupFolder, keptBackups } from "../../../electron/register/register-folder.ts";
import { removePassphrase, setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { protectionAt } from "./killing/look-at-files.ts";
import {
  filesHolding,
  filledRegister,
  secrets,
  temporaryFolder,
  testCircumstances,
  testRegister,
} from "./register-world.ts";
import { stoppedAfterEachStep } from "./stops.ts";

const first = passphraseBytes("nine grey geese");
const second = passphraseBytes("seven black swans");
const earlier = fileURLToPath(new URL("earlier/", import.meta.url));

const personal = [secrets.name, secrets.code, secrets.note, secrets.folder, "month 6", "tester"];

/** Opens what a stop left with whichever passphrase it needs, and finishes what was broken off. */
async function openStopped(file: string): Promise<Register> {
  const circumstances = testCircumstances();
  for (const passphrase of [undefined, first, second]) {
    try {
      const register = await openRegister(file, { circumstances, ...(passphrase && { passphrase }) });
      if (!register.locked) return register;
      register.close();
    } catch (error) {
      if (!(error instanceof Error) || !error.message.includes("not the passphrase")) throw error;
    }
  }
  throw new Error(`Nothing opens ${file}.`);
}

/** Everything that must hold after a stop: nothing in the clear under a passphrase, all of it there, backups too. */
async function checkStopped(file: string, athletes: readonly string[]): Promise<void> {
  // As it was left: opening would tidy up.
  if (protectionAt(file) !== undefined)
    expect(personal.flatMap((each) => filesHolding(dirname(file), each))).toEqual([]);
  // The data key that lay in the clear until then is changed when the passphrase is next given.
  (await openStopped(file)).close();
  const register = await openStopped(file);
  expect(register.conversion).toBeUndefined();
  expect(register.backupTroubles).toEqual([]);
  expect(register.verify()).toMatchObject({ problems: [], contentsChecked: true, isKeyed: register.encrypted });
  expect(register.reads.athletes().map(({ code }) => code)).toEqual(athletes);
  for (const fact of ["backupsBehind", "unfinishedCleaning", "clearKeys", "formerKeys", "dataKeyDue"] as const) {
    expect([fact, readFact(register.connection, fact)]).toEqual([fact, undefined]);
  }
  const { encrypted } = register;
  if (encrypted) expect(personal.flatMap((each) => filesHolding(dirname(file), each))).toEqual([]);
  register.close();
  expect(keptBackups(file).length).toBeGreaterThan(0);
  for (const path of keptBackups(file)) {
    const backup = await openStopped(path);
    expect(backup.encrypted).toBe(encrypted);
    expect(backup.verify().problems).toEqual([]);
    backup.close();
  }
}

async function filledWithBackup(): Promise<Register> {
  const register = await filledRegister();
  await keepDailyBackup(register);
  return register;
}

test("stopped after any step of setting, changing and removing a passphrase, nothing is in the clear under one and nothing is lost", async () => {
  const register = await filledWithBackup();
  const codes = register.reads.athletes().map(({ code }) => code);
  const set = await stoppedAfterEachStep(register.file, () => setPassphrase(register, first));
  const changed = await stoppedAfterEachStep(register.file, () => setPassphrase(register, second));
  const removed = await stoppedAfterEachStep(register.file, () => removePassphrase(register));
  expect(set.map(({ step }) => step)).toContain("conversion begun");
  expect(changed.map(({ step }) => step)).toEqual(["keys wrapped again", "backup wrapped again", "log emptied"]);
  expect(removed.map(({ step }) => step)).toContain("backup replaced");
  for (const { file } of [...set, ...changed, ...removed]) await checkStopped(file, codes);
});

/** A register that the program of schema 3 put under a passphrase, with a backup it kept. */
function earlierRegister(): string {
  const folder = join(temporaryFolder(), "earlier");
  mkdirSync(folder);
  const file = join(folder, "register.sqlite");
  copyFileSync(join(earlier, "schema-3-passphrase.sqlite"), file);
  mkdirSync(backupFolder(file));
  copyFileSync(
    join(earlier, "schema-3-passphrase-backup.sqlite"),
    join(backupFolder(file), "daily-2026-10-12T08-07-00.sqlite"),
  );
  return file;
}

test("a register that schema 3 put under a passphrase is brought to content keys, stopped after any step or not", async () => {
  const file = earlierRegister();
  const stops = await stoppedAfterEachStep(file, async () => {
    (await openRegister(file, { passphrase: first, circumstances: testCircumstances() })).close();
  });
  const steps = stops.map(({ step }) => step);
  expect(steps).toEqual(
    expect.arrayContaining(["schema raised", "conversion begun", "fields written again", "conversion ended"]),
  );
  for (const stop of [...stops, { file }]) await checkStopped(stop.file, ["EL-1", "EL-2"]);
});

test("while it is on its way everything can be read, written and found again", async () => {
  const file = earlierRegister();
  const register = await testRegister({ file, passphrase: first, convertLater: true });
  expect(register.conversion).toMatchObject({ done: 0 });
  expect(register.verify().problems).toEqual([]);
  const id = register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "EL-3" }));
  register.lock();
  register.unlock(first);
  expect(register.reads.record("athletes", id)?.content.code).toBe("EL-3");
  register.close();
  await checkStopped(file, ["EL-1", "EL-2", "EL-3"]);
});

test("the protection of an earlier time opens nothing of today's file", async () => {
  const file = earlierRegister();
  const register = await testRegister({ file, passphrase: first });
  const old = readFact(register.connection, "protection");
  setPassphrase(register, second);
  const { connection } = register;
  const { value, checksum } = connection.one("SELECT value, checksum FROM facts WHERE name = 'protection'")!;
  expect(JSON.parse(Buffer.from(value as Uint8Array).toString())).not.toEqual(old);
  const copy = join(temporaryFolder(), "copy");
  register.close();
  cpSync(dirname(file), copy, { recursive: true });
  const forged = await testRegister({ file: join(copy, "register.sqlite") });
  writeFact(forged.connection, "protection", old!);
  expect(() => forged.unlock(first)).toThrow("This passphrase does not open what lies in the register");
  expect(() => forged.unlock(second)).toThrow("This is not the passphrase of the register.");
  expect(forged.locked).toBe(true);
  forged.connection.run("UPDATE facts SET value = ?, checksum = ? WHERE name = 'protection'", value!, checksum!);
  forged.unlock(second);
  expect(forged.verify().problems).toEqual([]);
});
