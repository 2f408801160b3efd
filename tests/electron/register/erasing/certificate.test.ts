import { appendFileSync, linkSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { deflateRawSync, deflateSync } from "node:zlib";
import { expect, test } from "vitest";
import { backUpTo, keepDailyBackup } from "../../../../electron/register/backups.ts";
import { Connection } from "../../../../electron/register/connection.ts";
import { certificateNeedsEyes, certificateSections } from "../../../../electron/register/erasing/certificate-words.ts";
import { eraseForGood } from "../../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../../electron/register/import-sessions.ts";
import { passphraseBytes } from "../../../../electron/register/passphrase-bytes.ts";
import type { Register } from "../../../../electron/register/register.ts";
import { keptBackups } from "../../../../electron/register/register-folder.ts";
import { setPassphrase } from "../../../../electron/register/register-passphrase.ts";
import type { ErasureCertificate } from "../../../../electron/register/register-views.ts";
import {
  athleteId,
  filledRegister,
  foundSession,
  recordingBytes,
  secrets,
  temporaryFolder,
  testRegister,
} from "../register-world.ts";

/** Erases the athlete of the secrets. */
function erased(register: Register, dataFolder?: string): ErasureCertificate {
  const root = { kind: "athletes", id: athleteId(register, secrets.code) } as const;
  return eraseForGood(register, [root], { alsoOutsideBin: true, ...(dataFolder !== undefined && { dataFolder }) });
}

/** What was found, by the file's name. */
function foundIn({ files }: ErasureCertificate): Readonly<Record<string, readonly string[]>> {
  const held = files.filter(({ found }) => found.length > 0);
  return Object.fromEntries(held.map(({ path, found }) => [path.slice(path.lastIndexOf("/") + 1), found.toSorted()]));
}

test("a certificate says what was erased, searched and written anew, and holds nothing of the person", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  await backUpTo(register, join(dirname(register.file), "elsewhere.sqlite"), undefined);
  const [backup = ""] = keptBackups(register.file);
  const certificate = erased(register);
  expect(certificate).toMatchObject({
    erased: { athletes: 1, sessions: 2, recordings: 6 },
    searchedFor: expect.arrayContaining([
      { kind: "code", count: 1 },
      { kind: "name", count: 1 },
      { kind: "recording", count: 6 },
    ]),
    writtenAnew: [register.file, backup],
    copiesElsewhere: [expect.stringContaining("elsewhere.sqlite (backup, 2026-11-02)")],
    backupsOutOfReach: [],
    remains: [],
    unreadable: 0,
    kept: { athletes: 1 },
  });
  expect(certificate.files.map(({ path, is }) => [path, is])).toEqual(
    expect.arrayContaining([
      [register.file, "register"],
      [backup, "backup"],
    ]),
  );
  expect(foundIn(certificate)).toEqual({});
  expect(certificateNeedsEyes(certificate)).toBe(false);
  const said = JSON.stringify([certificate, certificateSections(certificate)]);
  for (const secret of [secrets.name, secrets.code, secrets.note]) expect(said).not.toContain(secret);
});

test("what other files of the data folder hold is found, raw and compressed, in each way of writing, and named", async () => {
  const register = await filledRegister();
  const dataFolder = temporaryFolder();
  mkdirSync(join(dataFolder, "layouts"));
  const recording = recordingBytes(12);
  const files: Readonly<Record<string, string | Uint8Array>> = {
    "layouts/plain.json": JSON.stringify({ name: `as ${secrets.name} has it` }),
    "utf16.txt": Buffer.from(secrets.code, "utf16le"),
    "whole.csv": recording,
    "compressed.bin": deflateSync(recording),
    "inside-a-zip.bin": Buffer.concat([Buffer.alloc(99), deflateRawSync(recording), Buffer.alloc(99)]),
    "a-page-of-it.bin": deflateSync(recording).subarray(60, 320),
    "nothing.txt": "Nobody.",
    "others.csv": recordingBytes(32),
  };
  for (const [name, bytes] of Object.entries(files)) writeFileSync(join(dataFolder, name), bytes);
  const certificate = erased(register, dataFolder);
  expect(foundIn(certificate)).toEqual({
    "plain.json": ["name"],
    "utf16.txt": ["code"],
    "whole.csv": ["recording"],
    "compressed.bin": ["recording"],
    "inside-a-zip.bin": ["recording"],
    "a-page-of-it.bin": ["recording"],
  });
  expect(certificateNeedsEyes(certificate)).toBe(true);
  const words = certificateSections(certificate).find(({ title }) => title.startsWith("Found"));
  expect(words?.lines).toHaveLength(6);
  expect(words?.lines.join()).toContain("holds a name. Look at this file, and delete it");
});

test("an earlier name and an earlier note, which only the journal knew, are looked for as well", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  const { content } = register.reads.record("athletes", id)!;
  register.writes.act("athlete changed", (changes) =>
    changes.change("athletes", id, { ...content, name: "Sunniva Lind", note: "wears a brace" }),
  );
  const dataFolder = temporaryFolder();
  writeFileSync(join(dataFolder, "earlier.txt"), secrets.name);
  writeFileSync(join(dataFolder, "later.txt"), "Sunniva Lind wears a brace");
  expect(foundIn(erased(register, dataFolder))).toEqual({ "earlier.txt": ["name"], "later.txt": ["name", "note"] });
});

test("what is left of an athlete in the register's own file or a backup is found there", async () => {
  const register = await filledRegister();
  // Stands for a page that was not overwritten: SQLite leaves alone what lies behind its last page.
  appendFileSync(register.file, Buffer.concat([Buffer.alloc(4096), Buffer.from(secrets.name), Buffer.alloc(4096)]));
  await keepDailyBackup(register);
  const strayBackup = `${register.file}-backups/copied-by-hand`;
  writeFileSync(strayBackup, secrets.code);
  writeFileSync(`${register.file}-passing-archive`, secrets.name);
  const found = foundIn(erased(register));
  expect(found).toMatchObject({ "copied-by-hand": ["code"], "register.sqlite-passing-archive": ["name"] });
});

test("what records of other people hold as well, and what is too short, is said and is no fault", async () => {
  const register = await filledRegister();
  importSession(register, foundSession({ code: "AB-1", name: "Åse Li" }, 4));
  const id = athleteId(register, "AB-1");
  const { content } = register.reads.record("athletes", id)!;
  register.writes.act("athlete changed", (changes) => {
    changes.change("athletes", id, { ...content, birthDate: "2001-05-09" });
    const other = athleteId(register, "ZR-0815");
    const before = register.reads.record("athletes", other)!;
    changes.change("athletes", other, { ...before.content, birthDate: "2001-05-09" });
  });
  const certificate = eraseForGood(register, [{ kind: "athletes", id }], { alsoOutsideBin: true });
  expect(certificate.tooShort).toEqual([{ kind: "code", count: 1 }]);
  // The note is that of every session of this world.
  expect(certificate.shared).toEqual(
    expect.arrayContaining([
      { kind: "date of birth", count: 1 },
      { kind: "note", count: 1 },
    ]),
  );
  expect(foundIn(certificate)).toEqual({});
  expect(certificateNeedsEyes(certificate)).toBe(false);
});

test("a recording that another athlete has too is no remnant, and one that only begins like another's is still found", async () => {
  const register = await filledRegister();
  // The same three recordings as the secrets' first session, under another athlete.
  importSession(register, { ...foundSession({ code: "TWIN-1" }, 1), folder: "twin" });
  const dataFolder = temporaryFolder();
  writeFileSync(join(dataFolder, "shared.csv"), recordingBytes(11));
  writeFileSync(join(dataFolder, "own.csv"), recordingBytes(21));
  expect(foundIn(erased(register, dataFolder))).toEqual({ "own.csv": ["recording"] });
});

test("a backup that cannot be opened is named, kept and blocks nothing, and one with a second name is said to live on", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const [backup = ""] = keptBackups(register.file);
  linkSync(backup, join(temporaryFolder(), "second"));
  const broken = `${register.file}-backups/daily-2026-01-01T00-00-00.sqlite`;
  writeFileSync(broken, "This is no register at all.");
  const certificate = erased(register);
  expect(certificate.backupsOutOfReach).toEqual([
    expect.stringContaining(broken),
    expect.stringContaining(`a second name of ${backup}`),
  ]);
  expect(certificate.remains).toEqual([]);
  expect(certificateNeedsEyes(certificate)).toBe(true);
  register.close();
  const again = await testRegister({ file: register.file });
  expect(again.earlierErasure).toBeUndefined();
  expect(again.verify().problems).toEqual([]);
});

test("searching costs the register neither its lock nor its log nor what is written afterwards", async () => {
  const register = await filledRegister();
  erased(register);
  const second = await testRegister({ file: register.file, waitMilliseconds: 0 });
  expect(second.readOnlyBecause).toContain("Another window or program");
  second.close();
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "AFTER-1" }));
  expect(register.connection.one("PRAGMA secure_delete")).toEqual({ secure_delete: 1 });
  expect(register.connection.one("PRAGMA foreign_keys")).toEqual({ foreign_keys: 1 });
  register.close();
  const again = await testRegister({ file: register.file });
  expect(again.reads.athletes().map(({ code }) => code)).toContain("AFTER-1");
});

test("under a passphrase the person's content key goes from register and backups, and the certificate says so", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphraseBytes("nine grey geese over the fjord"));
  await keepDailyBackup(register);
  const id = athleteId(register, secrets.code);
  const keysOf = (connection: Connection) =>
    connection.all("SELECT person FROM contentKeys").map(({ person }) => person);
  expect(keysOf(register.connection)).toContain(id);
  const certificate = erased(register);
  expect(certificate).toMatchObject({ keyDestroyed: true, remains: [] });
  expect(certificateSections(certificate)[0]?.lines.join()).toContain("The key of these contents was destroyed");
  expect(foundIn(certificate)).toEqual({});
  expect(keysOf(register.connection)).not.toContain(id);
  for (const path of keptBackups(register.file)) {
    const backup = new Connection(path, { readOnly: true });
    expect(keysOf(backup), path).not.toContain(id);
    backup.close();
  }
  expect(register.verify().problems).toEqual([]);
});

test("under a passphrase, what an earlier program left in the clear is found", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphraseBytes("nine grey geese over the fjord"));
  writeFileSync(
    `${register.file}-passing`,
    Buffer.concat([Buffer.from(secrets.name), deflateSync(recordingBytes(13))]),
  );
  expect(foundIn(erased(register))).toEqual({ "register.sqlite-passing": ["name", "recording"] });
});
