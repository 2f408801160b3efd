import { chmodSync, copyFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { backUpTo, keepDailyBackup, withBackup } from "../../../electron/register/backups.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { backupFolder, keptBackups } from "../../../electron/register/register-folder.ts";
import { removePassphrase, setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { previewBackup, restoreBackup } from "../../../electron/register/restore-backup.ts";
import { protectionAt } from "./killing/look-at-files.ts";
import {
  athleteId,
  filesHolding,
  filledRegister,
  foundSession,
  secrets,
  temporaryFolder,
  testCircumstances,
  testRegister,
} from "./register-world.ts";
import { stoppedAfterEachStep } from "./stops.ts";

const first = passphraseBytes("nine grey geese");
const second = passphraseBytes("seven black swans");

/** Opens every kept backup and the register itself, and finds them sound. */
async function allOpenWith(file: string, passphrase: Uint8Array | undefined): Promise<void> {
  for (const path of [file, ...keptBackups(file)]) {
    const opened = await openRegister(path, { circumstances: testCircumstances(), ...(passphrase && { passphrase }) });
    expect(opened.encrypted).toBe(passphrase !== undefined);
    expect(opened.verify()).toMatchObject({ problems: [], contentsChecked: true });
    opened.close();
  }
}

/** What used to be done next, and broke: erasing a person, and opening once more. */
async function eraseAndReopen(register: Register, passphrase: Uint8Array | undefined): Promise<void> {
  const id = athleteId(register, "ZR-0815");
  register.writes.moveToBin({ kind: "athletes", id });
  eraseForGood(register, [{ kind: "athletes", id }]);
  expect(register.backupTroubles).toEqual([]);
  register.close();
  await allOpenWith(register.file, passphrase);
}

test("a plain copy restored into a register that has a passphrase since comes under that passphrase", async () => {
  const register = await filledRegister();
  const copy = join(temporaryFolder(), "copy.sqlite");
  await backUpTo(register, copy, undefined);
  await keepDailyBackup(register);
  setPassphrase(register, first);
  expect(await previewBackup(register, copy, {})).toMatchObject({
    encrypted: false,
    afterwards: "the register's",
    needsPassphrase: false,
    protectionSentence: "No passphrase protects it; restored, it will be under this register's passphrase.",
  });
  await restoreBackup(register, copy, {});
  expect(register.encrypted).toBe(true);
  expect(register.verify()).toMatchObject({ problems: [], isKeyed: true });
  expect([secrets.name, secrets.note].flatMap((each) => filesHolding(dirname(register.file), each))).toEqual([]);
  await eraseAndReopen(register, first);
});

test("a copy in the clear, sealed or not, leaves nothing beside a register under a passphrase, wherever restoring it is stopped", async () => {
  const register = await filledRegister();
  const folder = temporaryFolder();
  await backUpTo(register, join(folder, "plain.sqlite"), undefined);
  await backUpTo(register, join(folder, "sealed.sqlite"), second);
  setPassphrase(register, first);
  const leaks = (file: string) => [secrets.name, secrets.note].flatMap((each) => filesHolding(dirname(file), each));
  for (const copy of ["plain.sqlite", "sealed.sqlite"]) {
    const path = join(folder, copy);
    expect(await withBackup(path, second, register.file, () => leaks(register.file))).toEqual([]);
    const stops = await stoppedAfterEachStep(register.file, () => restoreBackup(register, path, { file: second }));
    expect(stops.map(({ step }) => step)).toEqual(["restoration prepared", "copy made", "content replaced"]);
    expect(stops.flatMap(({ file }) => leaks(file))).toEqual([]);
  }
});

test("taking over a copy's passphrase leaves nothing in the clear under it and no backup behind, wherever it is stopped", async () => {
  const other = await filledRegister();
  const copy = join(temporaryFolder(), "copy.sqlite");
  setPassphrase(other, second);
  await backUpTo(other, copy, undefined);
  const register = await filledRegister();
  await keepDailyBackup(register);
  const stops = await stoppedAfterEachStep(register.file, () => restoreBackup(register, copy, { register: second }));
  expect(stops.map(({ step }) => step)).toEqual(
    expect.arrayContaining(["backup replaced", "content replaced", "conversion ended", "keys wrapped again"]),
  );
  for (const { file } of stops) {
    const isProtected = protectionAt(file) !== undefined;
    if (isProtected)
      expect([secrets.name, secrets.note].flatMap((each) => filesHolding(dirname(file), each))).toEqual([]);
    const again = await openRegister(file, {
      circumstances: testCircumstances(),
      ...(isProtected && { passphrase: second }),
    });
    const { encrypted } = again;
    expect(again.backupTroubles).toEqual([]);
    again.close();
    await allOpenWith(file, encrypted ? second : undefined);
  }
});

test("a locked register is not restored into: without its key nothing could come under its protection", async () => {
  const register = await filledRegister();
  const copy = join(temporaryFolder(), "copy.sqlite");
  await backUpTo(register, copy, undefined);
  setPassphrase(register, first);
  register.lock();
  await expect(restoreBackup(register, copy, {})).rejects.toThrow("The register is locked");
  expect(register.encrypted).toBe(true);
});

test("a copy with another data key and another passphrase is restored under the register's own, and every backup stays open", async () => {
  const other = await filledRegister();
  const copy = join(temporaryFolder(), "copy.sqlite");
  setPassphrase(other, second);
  await backUpTo(other, copy, undefined);
  const register = await filledRegister();
  setPassphrase(register, first);
  await keepDailyBackup(register);
  expect(await previewBackup(register, copy, {})).toMatchObject({
    afterwards: "the register's",
    needsPassphrase: true,
  });
  await expect(restoreBackup(register, copy, {})).rejects.toThrow("a passphrase of its own");
  await restoreBackup(register, copy, { register: second });
  setPassphrase(register, passphraseBytes("eleven brown owls"));
  expect(register.backupTroubles).toEqual([]);
  await eraseAndReopen(register, passphraseBytes("eleven brown owls"));
});

test("a copy from before a change of passphrase is restored with the passphrase of then, under that of now", async () => {
  const register = await filledRegister();
  setPassphrase(register, first);
  const copy = join(temporaryFolder(), "copy.sqlite");
  await backUpTo(register, copy, undefined);
  setPassphrase(register, second);
  await restoreBackup(register, copy, { register: first });
  await eraseAndReopen(register, second);
});

test("a register without a passphrase takes over the copy's, and its kept backups with it", async () => {
  const other = await filledRegister();
  const copy = join(temporaryFolder(), "copy.sqlite");
  setPassphrase(other, second);
  await backUpTo(other, copy, undefined);
  const register = await filledRegister();
  await keepDailyBackup(register);
  expect(await previewBackup(register, copy, {})).toMatchObject({ afterwards: "the backup's", needsPassphrase: true });
  await restoreBackup(register, copy, { register: second });
  expect([secrets.name, secrets.note].flatMap((each) => filesHolding(dirname(register.file), each))).toEqual([]);
  await eraseAndReopen(register, second);
});

test("a copy from before the passphrase was taken away is restored with it", async () => {
  const register = await filledRegister();
  setPassphrase(register, first);
  const copy = join(temporaryFolder(), "copy.sqlite");
  await backUpTo(register, copy, undefined);
  removePassphrase(register);
  await restoreBackup(register, copy, { register: first });
  await eraseAndReopen(register, first);
});

describe("a kept backup of another register", () => {
  async function withForeignBackup(): Promise<{ readonly register: Register; readonly foreign: string }> {
    const other = await filledRegister();
    setPassphrase(other, second);
    const register = await filledRegister();
    await keepDailyBackup(register);
    const foreign = join(backupFolder(register.file), "daily-2026-11-01T08-00-00.sqlite");
    other.close();
    copyFileSync(other.file, foreign);
    chmodSync(foreign, 0o600);
    return { register, foreign };
  }

  test("is named, kept and blocks neither setting nor changing a passphrase nor erasing nor opening", async () => {
    const { register, foreign } = await withForeignBackup();
    const trouble = { path: foreign, because: "it is under another passphrase than the register" };
    setPassphrase(register, first);
    expect(register.backupTroubles).toEqual([trouble]);
    setPassphrase(register, passphraseBytes("eleven brown owls"));
    expect(register.backupTroubles).toEqual([trouble]);
    importSession(register, foundSession({ code: "THIRD" }, 9));
    const id = athleteId(register, "THIRD");
    register.writes.moveToBin({ kind: "athletes", id });
    eraseForGood(register, [{ kind: "athletes", id }]);
    expect(register.backupTroubles).toEqual([trouble]);
    register.close();
    const again = await testRegister({ file: register.file, passphrase: passphraseBytes("eleven brown owls") });
    expect(again.verify().problems).toEqual([]);
    const kept = await testRegister({ file: foreign, passphrase: second });
    expect(kept.verify().problems).toEqual([]);
  });

  test("comes along where the passphrase that is set is its own", async () => {
    const { register } = await withForeignBackup();
    setPassphrase(register, second);
    expect(register.backupTroubles).toEqual([]);
    register.close();
    await allOpenWith(register.file, second);
  });
});
