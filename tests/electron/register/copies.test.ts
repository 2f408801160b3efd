import { chmodSync, copyFileSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backUpTo, keepDailyBackup } from "../../../electron/register/backups.ts";
import { checkCopy } from "../../../electron/register/copies/check-copy.ts";
import { forgetCopy } from "../../../electron/register/copies/forget-copy.ts";
import { listCopies } from "../../../electron/register/copies/list-copies.ts";
import { eraseForGood, previewErasure } from "../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { backupFolder } from "../../../electron/register/register-folder.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import type { KnownCopy } from "../../../electron/register/register-views.ts";
import { restoreBackup } from "../../../electron/register/restore-backup.ts";
import { runProgram } from "./child-program.ts";
import {
  athleteId,
  filledRegister,
  foundSession,
  secrets,
  temporaryFolder,
  testCircumstances,
  testRegister,
} from "./register-world.ts";

const first = passphraseBytes("nine grey geese");
const second = passphraseBytes("seven black swans");
const own = passphraseBytes("carry it home");

/** Where a copy is put, in a folder of its own. */
function elsewhere(name = "copy.sqlite"): string {
  return join(temporaryFolder(), name);
}

function copyAt(register: Register, path: string): KnownCopy {
  const copy = listCopies(register).copies.find((each) => each.path === path);
  if (copy === undefined) throw new Error(`${path} is not listed.`);
  return copy;
}

const reasons = ({ stale }: KnownCopy) => stale.map(({ reason }) => reason);

function erase(register: Register, code: string): void {
  const key = { kind: "athletes", id: athleteId(register, code) } as const;
  register.writes.moveToBin(key);
  eraseForGood(register, [key]);
}

async function dailyOf(register: Register): Promise<string> {
  const path = await keepDailyBackup(register);
  if (path === undefined) throw new Error("No backup was made.");
  return path;
}

test("kept ones and those elsewhere are listed with when, how large, what protects them and when they were checked", async () => {
  const register = await filledRegister();
  const daily = await dailyOf(register);
  const [plain, sealed, archive] = [elsewhere(), elsewhere("copy.sealed"), elsewhere("one.zip")];
  await backUpTo(register, plain, undefined);
  await backUpTo(register, sealed, own);
  writeArchive(register, archive, { athlete: athleteId(register, secrets.code) });
  const { copies, folder, notTold } = listCopies(register);
  expect({ folder, notTold }).toEqual({ folder: backupFolder(register.file), notTold: [] });
  expect(copies.map(({ key: _key, ...copy }) => copy)).toEqual([
    {
      path: daily,
      kind: "kept daily",
      madeAt: expect.stringMatching(/^2026-11-02T08:\d\d:00Z$/),
      byteLength: readFileSync(daily).byteLength,
      protection: "none",
      verifiedAt: expect.stringMatching(/^2026-11-02T08:/),
      found: { extent: "structure", problems: [], writtenSince: false },
      state: "there",
      stale: [],
    },
    {
      path: archive,
      kind: "archive elsewhere",
      madeAt: expect.stringMatching(/^2026-11-02T08:/),
      byteLength: readFileSync(archive).byteLength,
      protection: "none",
      state: "there",
      stale: [],
      athlete: secrets.code,
    },
    {
      path: sealed,
      kind: "backup elsewhere",
      madeAt: expect.stringMatching(/^2026-11-02T08:/),
      byteLength: readFileSync(sealed).byteLength,
      protection: "a passphrase of its own",
      state: "there",
      stale: [],
    },
    {
      path: plain,
      kind: "backup elsewhere",
      madeAt: expect.stringMatching(/^2026-11-02T08:/),
      byteLength: readFileSync(plain).byteLength,
      protection: "none",
      verifiedAt: expect.stringMatching(/^2026-11-02T08:/),
      found: { extent: "structure", problems: [], writtenSince: false },
      state: "there",
      stale: [],
    },
  ]);
});

describe("a copy elsewhere that cannot be reached", () => {
  test("is listed so, with what can be seen of the reason", async () => {
    const register = await filledRegister();
    const [gone, replaced] = [elsewhere(), elsewhere()];
    const disk = join(temporaryFolder(), "disk");
    mkdirSync(disk);
    const onDisk = join(disk, "copy.sqlite");
    for (const path of [gone, replaced, onDisk]) await backUpTo(register, path, undefined);
    rmSync(gone);
    writeFileSync(replaced, "a letter");
    renameSync(disk, `${disk}-in-a-drawer`);
    expect(copyAt(register, gone)).toMatchObject({
      state: "unreachable",
      because: "There is no such file: it was deleted or moved, or another disk is connected in its place.",
    });
    expect(copyAt(register, replaced).because).toBe(
      "What lies there now is not what was put there: the file was damaged or replaced.",
    );
    expect(copyAt(register, onDisk).because).toBe(
      "Its folder is not there: its disk may not be connected, or the folder was moved or deleted.",
    );
    renameSync(`${disk}-in-a-drawer`, disk);
    expect(copyAt(register, onDisk).state).toBe("there");
  });

  test.skipIf(process.platform === "win32")("because it may not be read says that", async () => {
    const register = await filledRegister();
    const place = join(dirname(register.file), "copy.sqlite");
    await backUpTo(register, place, undefined);
    register.close();
    chmodSync(place, 0o000);
    for (const path of [dirname(register.file), register.file]) chmodSync(path, 0o755);
    const { out, err } = runProgram(
      `
if (process.getuid() === 0) { process.setgid(65534); process.setuid(65534); }
const open = await register.openRegister(file, { waitMilliseconds: 0 });
process.stdout.write(register.listCopies(open).copies.map(({ state, because }) => state + ": " + because).join("|"));
open.close();
`,
      [register.file],
    );
    expect({ out, err }).toEqual({ out: "unreachable: It cannot be read by this user.", err: "" });
  });

  test("goes off the list when a person says that it is gone, and erasing names it no more", async () => {
    const register = await filledRegister();
    const place = elsewhere();
    // Written over once: two notes, one copy.
    for (const _time of [1, 2]) await backUpTo(register, place, undefined);
    const { key } = copyAt(register, place);
    expect(listCopies(register).copies).toHaveLength(1);
    expect(() => forgetCopy(register, key)).toThrow(`${place} is still there: delete it first. Nothing was changed.`);
    rmSync(place);
    forgetCopy(register, key);
    expect(listCopies(register).copies).toEqual([]);
    const root = { kind: "athletes", id: athleteId(register, secrets.code) } as const;
    expect(previewErasure(register, [root]).copiesElsewhere).toEqual([]);
    expect(() => forgetCopy(register, key)).toThrow("There is no such copy elsewhere in the list");
    register.writes.undo();
    expect(copyAt(register, place).state).toBe("unreachable");
    expect(register.verify().problems).toEqual([]);
  });
});

describe("a change of passphrase", () => {
  test("leaves copies elsewhere under the earlier one, reachable or not; kept ones come along", async () => {
    const register = await filledRegister();
    const plain = elsewhere();
    await backUpTo(register, plain, undefined);
    setPassphrase(register, first);
    const daily = await dailyOf(register);
    const [here, gone, sealed] = [elsewhere(), elsewhere(), elsewhere()];
    for (const path of [here, gone]) await backUpTo(register, path, undefined);
    await backUpTo(register, sealed, own);
    for (const path of [daily, here, gone]) expect(copyAt(register, path).protection).toBe("this passphrase");
    setPassphrase(register, second);
    rmSync(gone);
    for (const path of [here, gone]) {
      expect(copyAt(register, path)).toMatchObject({
        protection: "an earlier passphrase",
        stale: [{ reason: "earlier passphrase" }],
      });
    }
    expect(copyAt(register, daily)).toMatchObject({ protection: "this passphrase", stale: [] });
    expect(copyAt(register, sealed)).toMatchObject({ protection: "a passphrase of its own", stale: [] });
    expect(copyAt(register, plain)).toMatchObject({ protection: "none", stale: [{ reason: "no passphrase" }] });
  });

  test("is told by the journal's order where the clock was put back", async () => {
    let time = "2026-11-02T08:00:00Z";
    const circumstances = { who: "tester", now: () => new Date(time) };
    const register = await filledRegister({ circumstances });
    setPassphrase(register, first);
    const gone = elsewhere();
    await backUpTo(register, gone, undefined);
    rmSync(gone);
    time = "2026-10-01T08:00:00Z";
    setPassphrase(register, second);
    expect(copyAt(register, gone).protection).toBe("an earlier passphrase");
  });

  test("of which going back took the entry away is not guessed at", async () => {
    const register = await filledRegister();
    setPassphrase(register, first);
    const copy = elsewhere();
    await backUpTo(register, copy, undefined);
    setPassphrase(register, second);
    await restoreBackup(register, copy, { register: first });
    expect(copyAt(register, copy).protection).toBe("not known");
  });

  test("names a kept backup that could not be brought along", async () => {
    const register = await filledRegister();
    const other = await filledRegister();
    setPassphrase(other, second);
    const daily = await dailyOf(register);
    const foreign = join(backupFolder(register.file), "daily-2026-10-01T08-00-00.sqlite");
    copyFileSync(other.file, foreign);
    other.close();
    copyFileSync(other.file, foreign);
    setPassphrase(register, first);
    expect(copyAt(register, daily)).toMatchObject({ protection: "this passphrase", stale: [] });
    const listed = copyAt(register, foreign);
    expect(listed.protection).toBe("a passphrase of its own");
    expect(listed.stale).toEqual([
      { reason: "another register", sentence: "It is a backup of another register." },
      {
        reason: "left behind",
        sentence: "It could not be written again: it is under another passphrase than the register.",
      },
    ]);
    expect(await checkCopy(register, basename(foreign))).toMatchObject({
      copy: { found: { extent: "checksums", problems: [] } },
      notChecked: "Its contents were not decrypted: its key is not at hand.",
      isKept: true,
    });
  });
});

describe("an erasure", () => {
  test("is told of every copy elsewhere that was made before and may hold the person, without a name", async () => {
    const register = await filledRegister();
    const [here, gone, archive, other] = ["a", "b", "c.zip", "d.zip"].map((name) => elsewhere(name));
    const daily = await dailyOf(register);
    for (const path of [here!, gone!]) await backUpTo(register, path, undefined);
    writeArchive(register, archive!);
    writeArchive(register, other!, { athlete: athleteId(register, "ZR-0815") });
    rmSync(gone!);
    erase(register, secrets.code);
    const sentence = (path: string) => copyAt(register, path).stale.map((each) => each.sentence);
    const advice = " Delete it where it is not needed.";
    expect(sentence(here!)).toEqual([`Somebody who was erased since is still in it.${advice}`]);
    const maybe = `It was made before somebody was erased: that person's data may still be in it.${advice}`;
    for (const path of [gone!, archive!]) expect(sentence(path)).toEqual([maybe]);
    // Written again with the erasure, and an archive that never held anybody else.
    for (const path of [daily, other!]) expect(sentence(path)).toEqual([]);
    expect(copyAt(register, daily).found?.writtenSince).toBe(true);
    expect(JSON.stringify(listCopies(register))).not.toContain(secrets.name);
    expect(JSON.stringify(listCopies(register))).not.toContain(secrets.code);
  });

  test("of somebody who came later says nothing of the copies of before", async () => {
    const register = await filledRegister();
    const [here, gone] = [elsewhere(), elsewhere()];
    for (const path of [here, gone]) await backUpTo(register, path, undefined);
    rmSync(gone);
    importSession(register, foundSession({ code: "LATER" }, 9));
    erase(register, "LATER");
    for (const path of [here, gone]) expect(reasons(copyAt(register, path))).toEqual([]);
    const later = elsewhere();
    await backUpTo(register, later, undefined);
    expect(reasons(copyAt(register, later))).toEqual([]);
  });

  test("of a session alone is told of an archive of one athlete, whose it may have been", async () => {
    const register = await filledRegister();
    const archive = elsewhere("one.zip");
    const athlete = athleteId(register, secrets.code);
    writeArchive(register, archive, { athlete });
    const session = register.reads.athletePage(athlete)!.sessions[0]!.session;
    register.writes.moveToBin(session);
    eraseForGood(register, [session]);
    expect(copyAt(register, archive)).toMatchObject({ athlete: secrets.code, stale: [{ reason: "erased since" }] });
  });
});

describe("checking", () => {
  test("looks at everything that the keys at hand open, and keeps when that was", async () => {
    const register = await filledRegister();
    setPassphrase(register, first);
    const daily = await dailyOf(register);
    const [plain, sealed, archive] = [elsewhere(), elsewhere(), elsewhere()];
    await backUpTo(register, plain, undefined);
    await backUpTo(register, sealed, own);
    writeArchive(register, archive);
    for (const path of [daily, plain, archive]) {
      const { key, verifiedAt: before = "" } = copyAt(register, path);
      const checked = await checkCopy(register, key);
      expect(checked.copy).toEqual(copyAt(register, path));
      expect(checked.copy.found).toEqual({ extent: "everything", problems: [], writtenSince: false });
      expect(checked.copy.verifiedAt! > before).toBe(true);
    }
    const { key } = copyAt(register, sealed);
    expect(await checkCopy(register, key)).toMatchObject({
      notChecked: "Its envelope was not opened: it is under a passphrase of its own.",
      isKept: false,
    });
    expect((await checkCopy(register, key, second)).notChecked).toBe(
      "Its envelope was not opened: the passphrase is another one, or the file was altered; nothing of it was used.",
    );
    expect(copyAt(register, sealed).verifiedAt).toBeUndefined();
    expect((await checkCopy(register, key, own)).copy.found).toMatchObject({ extent: "everything", problems: [] });
    expect(register.verify().problems).toEqual([]);
  });

  test("finds what is damaged in a kept backup, elsewhere and in an archive, and remembers it", async () => {
    const register = await filledRegister();
    const daily = await dailyOf(register);
    const [copy, archive] = [elsewhere(), elsewhere("all.zip")];
    await backUpTo(register, copy, undefined);
    writeArchive(register, archive);
    for (const [path, at] of [
      [daily, readFileSync(daily).indexOf(secrets.name)],
      [copy, readFileSync(copy).indexOf(secrets.note)],
      [archive, 60],
    ] as const) {
      const bytes = readFileSync(path);
      bytes[at]! ^= 1;
      writeFileSync(path, bytes);
      const { copy: checked } = await checkCopy(register, copyAt(register, path).key);
      expect(checked.found?.problems.length, path).toBeGreaterThan(0);
      expect(copyAt(register, path).found).toEqual(checked.found);
      expect(checked.found?.problems.join()).not.toContain("newest backup");
    }
    expect(copyAt(register, archive).found?.problems).toEqual([
      "The archive is not as it was written: its checksum does not fit.",
    ]);
    register.close();
    const again = await testRegister({ file: register.file });
    expect(copyAt(again, daily).found?.problems).toHaveLength(2);
    expect(copyAt(again, copy).found?.problems.length).toBeGreaterThan(0);
  });

  test("of a kept backup stays known after going back to it", async () => {
    const register = await filledRegister();
    const daily = await dailyOf(register);
    const { copy } = await checkCopy(register, basename(daily));
    await restoreBackup(register, daily, {});
    expect(copyAt(register, daily)).toEqual(copy);
  });

  test("says when a file was written again since", async () => {
    const register = await filledRegister();
    const copy = elsewhere();
    await backUpTo(register, copy, undefined);
    expect(copyAt(register, copy).found?.writtenSince).toBe(false);
    writeFileSync(copy, readFileSync(copy));
    expect(copyAt(register, copy).found?.writtenSince).toBe(true);
  });

  test("refuses what is not in the list", async () => {
    const register = await filledRegister();
    await expect(checkCopy(register, "../register.sqlite")).rejects.toThrow("There is no such copy in the list");
  });
});

test("copies elsewhere that were noted after a backup stay listed when it is restored", async () => {
  const register = await filledRegister();
  const daily = await dailyOf(register);
  const [copy, archive] = [elsewhere(), elsewhere("one.zip")];
  await backUpTo(register, copy, undefined);
  writeArchive(register, archive, { athlete: athleteId(register, secrets.code) });
  const before = listCopies(register).copies.filter(({ path }) => path === copy || path === archive);
  await restoreBackup(register, daily, {});
  const after = listCopies(register).copies.filter(({ path }) => path === copy || path === archive);
  expect(after).toEqual(before);
  expect(register.verify().problems).toEqual([]);
});

test("a register open for reading only lists and checks, and says that it keeps nothing", async () => {
  const register = await filledRegister();
  const daily = await dailyOf(register);
  const copy = elsewhere();
  await backUpTo(register, copy, undefined);
  const reading = await testRegister({ file: register.file, waitMilliseconds: 0 });
  expect(reading.readOnlyBecause).toBeDefined();
  expect(listCopies(reading)).toEqual(listCopies(register));
  const checked = await checkCopy(reading, copyAt(reading, copy).key);
  expect(checked).toMatchObject({ isKept: false, copy: { found: { extent: "everything", problems: [] } } });
  expect(copyAt(reading, copy).found?.extent).toBe("structure");
  rmSync(copy);
  expect(() => forgetCopy(reading, copyAt(reading, copy).key)).toThrow("Nothing was changed.");
  expect(copyAt(reading, daily).state).toBe("there");
});

test("a locked register lists and checks the kept ones, and says what it cannot tell", async () => {
  const register = await filledRegister();
  setPassphrase(register, first);
  const daily = await dailyOf(register);
  await backUpTo(register, elsewhere(), undefined);
  register.lock();
  const { copies, notTold } = listCopies(register);
  expect(copies.map(({ path, protection }) => [path, protection])).toEqual([[daily, "this passphrase"]]);
  expect(notTold).toEqual([
    "The register is locked: copies elsewhere are not listed (1 noted), nor is it told which copies are under an earlier passphrase and which hold what was erased.",
  ]);
  expect(await checkCopy(register, basename(daily))).toMatchObject({
    copy: { found: { extent: "checksums", problems: [] } },
    isKept: true,
  });
  register.unlock(first);
  expect(copyAt(register, daily).found?.extent).toBe("checksums");
  register.close();
  const opened = await testRegister({ file: register.file, circumstances: testCircumstances() });
  expect(listCopies(opened).copies).toHaveLength(1);
});
