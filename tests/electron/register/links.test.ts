import { existsSync, linkSync, mkdirSync, readdirSync, readFileSync, renameSync, symlinkSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { expect, test } from "vitest";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backUpTo, keepDailyBackup } from "../../../electron/register/backups.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import type { Register } from "../../../electron/register/register.ts";
import { keptBackups } from "../../../electron/register/register-folder.ts";
import { restoreBackup } from "../../../electron/register/restore-backup.ts";
import { startProgram } from "./child-program.ts";
import { athleteId, filesHolding, filledRegister, secrets, temporaryFolder, testRegister } from "./register-world.ts";

/** Two ways to a register: a link to the file, and a link to the folder it lies in. */
function waysTo(register: Register): readonly string[] {
  const folder = temporaryFolder();
  const toFile = join(folder, "by-file.sqlite");
  symlinkSync(register.file, toFile);
  const toFolder = join(folder, "by-folder");
  symlinkSync(dirname(register.file), toFolder);
  return [toFile, join(toFolder, basename(register.file))];
}

test("through a link to the file or to its folder a second program finds the register taken, and the other way round", async () => {
  const register = await filledRegister();
  for (const way of waysTo(register)) {
    const second = await testRegister({ file: way, waitMilliseconds: 0 });
    expect(second.readOnlyBecause, way).toContain("Another window or program");
    expect(second.file).toBe(register.file);
  }
  const [way = ""] = waysTo(register);
  register.close();
  const other = await startProgram(
    `const open = await register.openRegister(file);
process.stdout.write(open.readOnlyBecause + "\\n");
setInterval(() => undefined, 1000);`,
    [way],
  );
  expect(other.firstLine).toBe("undefined\n");
  const here = await testRegister({ file: register.file, waitMilliseconds: 0 });
  expect(here.readOnlyBecause).toContain("Another window or program");
  await other.kill();
});

test("an athlete erased through a link is gone from the backups that lie beside the register itself", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  register.close();
  for (const [at, way] of waysTo(register).entries()) {
    const opened = await testRegister({ file: way });
    const root = { kind: "athletes", id: athleteId(opened, at === 0 ? secrets.code : "ZR-0815") } as const;
    opened.writes.moveToBin(root);
    eraseForGood(opened, [root]);
    opened.close();
    expect(readdirSync(dirname(way)).filter((name) => name.startsWith("by-file.sqlite-"))).toEqual([]);
    const gone = at === 0 ? secrets.name : secrets.otherName;
    expect(filesHolding(dirname(register.file), gone)).toEqual([]);
  }
});

test("a backup that was moved elsewhere and linked to is written anew where it lies", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const [backup = ""] = keptBackups(register.file);
  const elsewhere = join(temporaryFolder(), "moved.sqlite");
  renameSync(backup, elsewhere);
  symlinkSync(elsewhere, backup);
  const root = { kind: "athletes", id: athleteId(register, secrets.code) } as const;
  register.writes.moveToBin(root);
  eraseForGood(register, [root]);
  expect(readFileSync(elsewhere).includes(secrets.name)).toBe(false);
  expect(readFileSync(elsewhere).includes(secrets.otherName)).toBe(true);
});

test("a link among the backups that leads to the register itself is no backup", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  symlinkSync(register.file, join(`${register.file}-backups`, "daily-2026-01-01T00-00-00.sqlite"));
  expect(keptBackups(register.file)).toHaveLength(1);
});

test("neither a backup nor an archive is written over the register, whatever name it is given", async () => {
  const register = await filledRegister();
  const before = readFileSync(register.file);
  const second = join(dirname(register.file), "second.sqlite");
  symlinkSync(register.file, second);
  for (const way of [register.file, `${register.file}-wal`, `${register.file}-lock`, second, ...waysTo(register)]) {
    await expect(backUpTo(register, way, undefined), way).rejects.toThrow("is the register itself or belongs to it");
    expect(() => writeArchive(register, way), way).toThrow("is the register itself or belongs to it");
    if (way.endsWith("-lock") || way.endsWith("-wal")) continue;
    await expect(restoreBackup(register, way, {}), way).rejects.toThrow("This is the register itself");
  }
  expect(readFileSync(register.file).equals(before)).toBe(true);
  expect(register.verify().problems).toEqual([]);
});

test("a copy made through a link goes to where the link leads, and is remembered by that place", async () => {
  const register = await filledRegister();
  const folder = temporaryFolder();
  mkdirSync(join(folder, "disk"));
  symlinkSync(join(folder, "disk"), join(folder, "way"));
  await backUpTo(register, join(folder, "way", "copy.sqlite"), undefined);
  expect(existsSync(join(folder, "disk", "copy.sqlite"))).toBe(true);
  expect(register.reads.records("copies").map(({ content }) => content.path)).toEqual([
    join(folder, "disk", "copy.sqlite"),
  ]);
});

test("a register with a second name in the file system is open for reading only, until the name is gone", async () => {
  const register = await filledRegister();
  register.close();
  const second = join(temporaryFolder(), "second.sqlite");
  linkSync(register.file, second);
  for (const way of [register.file, second]) {
    const opened = await testRegister({ file: way });
    expect(opened.readOnlyBecause, way).toContain("a second name elsewhere (a hard link)");
    expect(opened.reads.athletes()).toHaveLength(2);
    opened.close();
  }
});

test("a link that leads nowhere is refused, and no register is made behind it", async () => {
  const folder = temporaryFolder();
  symlinkSync(join(folder, "gone.sqlite"), join(folder, "link.sqlite"));
  await expect(testRegister({ file: join(folder, "link.sqlite") })).rejects.toThrow(
    "a link to a place where no file is",
  );
  expect(readdirSync(folder)).toEqual(["link.sqlite"]);
});
