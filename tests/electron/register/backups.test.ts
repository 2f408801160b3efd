import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { expect, test } from "vitest";
import { backUpTo, keepDailyBackup, makeDailyBackup } from "../../../electron/register/backups.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { dailyBackups, keptBackups } from "../../../electron/register/register-folder.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { previewBackup, restoreBackup } from "../../../electron/register/restore-backup.ts";
import { athleteId, filledRegister, secrets, testRegister } from "./register-world.ts";

test("a day has one backup, and the last ten days are kept", async () => {
  let day = 1;
  const now = () => new Date(`2026-11-${String(day).padStart(2, "0")}T09:00:00Z`);
  const register = await filledRegister({ circumstances: { who: "tester", now } });
  for (day = 1; day <= 13; day += 1) {
    expect(await keepDailyBackup(register)).toBeDefined();
    expect(await keepDailyBackup(register)).toBeUndefined();
  }
  expect(dailyBackups(register.file).map((path) => basename(path).slice(0, 16))).toEqual(
    Array.from({ length: 10 }, (_, index) => `daily-2026-11-${String(index + 4).padStart(2, "0")}`),
  );
});

test("each backup is a whole register of its own, with everything up to its moment", async () => {
  const register = await filledRegister();
  const path = await makeDailyBackup(register);
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "LATER" }));
  const backup = await testRegister({ file: path });
  expect(backup.verify().problems).toEqual([]);
  expect(backup.reads.athletes().map(({ code }) => code)).toEqual([secrets.code, "ZR-0815"]);
});

test("what a copy that broke off has left is cleared away, and no backup is ever half a file", async () => {
  const register = await filledRegister();
  await makeDailyBackup(register);
  register.close();
  const folder = `${register.file}-backups`;
  writeFileSync(join(folder, ".daily-2026-11-09T09-00-00.sqlite.part"), "half");
  writeFileSync(`${register.file}-passing`, "a copy in the clear that was to be sealed");
  const again = await testRegister({ file: register.file });
  expect(readdirSync(folder)).toHaveLength(1);
  expect(existsSync(`${register.file}-passing`)).toBe(false);
  expect(keptBackups(again.file)).toHaveLength(1);
});

test("a backup shows what it holds before it replaces anything, and restoring keeps today's content beside it", async () => {
  const register = await filledRegister();
  const path = await makeDailyBackup(register);
  const id = athleteId(register, secrets.code);
  register.writes.moveToBin({ kind: "athletes", id });
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "LATER" }));
  expect(await previewBackup(register, path, {})).toMatchObject({
    athletes: 2,
    sessions: 3,
    recordings: 9,
    encrypted: false,
    lastChange: expect.stringMatching(/^2026-11-02T08:/),
  });
  expect(register.reads.athletes().map(({ code }) => code)).toEqual(["LATER", "ZR-0815"]);
  await restoreBackup(register, path, {});
  expect(register.reads.athletes().map(({ code }) => code)).toEqual([secrets.code, "ZR-0815"]);
  expect(register.reads.journal(1)).toMatchObject([{ action: "restored from a backup" }]);
  expect(register.verify().problems).toEqual([]);
  const replaced = keptBackups(register.file).find((each) => basename(each).startsWith("before-restoring"));
  const before = await testRegister({ file: replaced ?? "" });
  expect(before.reads.athletes().map(({ code }) => code)).toEqual(["LATER", "ZR-0815"]);
  // It goes on as a register: what is written now is there after the next opening.
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "AFTER" }));
  register.close();
  const again = await testRegister({ file: register.file });
  expect(again.reads.athletes().map(({ code }) => code)).toEqual(["AFTER", secrets.code, "ZR-0815"]);
});

test("a damaged backup is not restored, and the register is as it was", async () => {
  const register = await filledRegister();
  const path = await makeDailyBackup(register);
  const bytes = readFileSync(path);
  const at = bytes.indexOf(secrets.name);
  expect(at).toBeGreaterThan(0);
  bytes[at]! ^= 1;
  writeFileSync(path, bytes);
  await expect(restoreBackup(register, path, {})).rejects.toThrow("This backup is damaged and was not used.");
  expect(register.reads.athletes()).toHaveLength(2);
  expect(register.reads.journal(1)).toMatchObject([{ action: "recordings imported" }]);
});

test("a backup under a passphrase, of a register under another, is restored with both", async () => {
  const first = await filledRegister();
  setPassphrase(first, passphraseBytes("nine grey geese"));
  const elsewhere = join(dirname(first.file), "elsewhere.backup");
  await backUpTo(first, elsewhere, passphraseBytes("seven black swans"));
  const other = await testRegister();
  await expect(restoreBackup(other, elsewhere, { file: passphraseBytes("seven black swans") })).rejects.toThrow(
    "a passphrase of its own",
  );
  expect(other.reads.athletes()).toEqual([]);
  await restoreBackup(other, elsewhere, {
    file: passphraseBytes("seven black swans"),
    register: passphraseBytes("nine grey geese"),
  });
  expect(other.reads.athletes()).toHaveLength(2);
  expect(other.encrypted).toBe(true);
  expect(other.verify()).toMatchObject({ problems: [], contentsChecked: true });
  expect(existsSync(`${other.file}-passing`)).toBe(false);
});

test("what is no backup is refused by what it is", async () => {
  const register = await filledRegister();
  const folder = dirname(register.file);
  await expect(previewBackup(register, join(folder, "nowhere"), {})).rejects.toThrow("There is no backup at");
  writeFileSync(join(folder, "notes.txt"), "only some notes ".repeat(500));
  await expect(previewBackup(register, join(folder, "notes.txt"), {})).rejects.toThrow("The file is no register");
});
