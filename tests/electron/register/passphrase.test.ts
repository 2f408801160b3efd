import { dirname, join } from "node:path";
import { deflateSync } from "node:zlib";
import { expect, test } from "vitest";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backUpTo, keepDailyBackup } from "../../../electron/register/backups.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { keptBackups } from "../../../electron/register/register-folder.ts";
import { removePassphrase, setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { athleteId, filesHolding, filledRegister, recordingBytes, secrets, testRegister } from "./register-world.ts";

const passphrase = passphraseBytes("nine grey geese");
const other = passphraseBytes("seven black swans");

/** Everything personal, as it would stand in an unencrypted file. */
const personal: readonly (Uint8Array | string)[] = [
  secrets.name,
  secrets.code,
  secrets.note,
  secrets.folder,
  "2026-10-03",
  "month 6",
  "arm swing",
  "tester",
  deflateSync(recordingBytes(11)).subarray(40, 100),
  recordingBytes(11).subarray(20, 60),
];

test("under a passphrase no file holds a name, code, note, date, user or byte of a recording in the clear", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const folder = dirname(register.file);
  expect(personal.map((each) => filesHolding(folder, each).length > 0)).toEqual([
    ...personal.slice(0, -1).map(() => true),
    // Recordings are compressed: their own bytes stand nowhere even without a passphrase.
    false,
  ]);
  setPassphrase(register, passphrase);
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: `${secrets.code}-2` }));
  await backUpTo(register, join(folder, "elsewhere.backup"), passphrase);
  writeArchive(register, join(folder, "archive.sealed"), { passphrase });
  expect(personal.flatMap((each) => filesHolding(folder, each))).toEqual([]);
});

test("locked, nothing is read or written; unlocked, everything is there and can be searched", async () => {
  const register = await filledRegister();
  const before = register.reads.athletes();
  setPassphrase(register, passphrase);
  const { reads, writes } = register;
  register.lock();
  expect(register.locked).toBe(true);
  expect(() => register.reads).toThrow("The register is locked");
  expect(() => register.writes).toThrow("The register is locked");
  // Whoever still holds the objects of before cannot use them either.
  expect(() => reads.records("sessions")).toThrow("The register is locked");
  expect(() => writes.act("athlete added", (set) => set.add("athletes", {}, { code: "X" }))).toThrow("locked");
  expect(() => register.unlock(passphraseBytes("nine grey goose"))).toThrow(
    "This is not the passphrase of the register.",
  );
  register.unlock(passphrase);
  expect(register.reads.athletes()).toEqual(before);
  expect(register.reads.athletes({ text: "TJELD sunn" }).map(({ code }) => code)).toEqual([secrets.code]);
  expect(register.verify()).toMatchObject({ problems: [], contentsChecked: true });
});

test("a locked register is verified as far as that goes, and says so", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  register.lock();
  expect(register.verify()).toMatchObject({ problems: [], contentsChecked: false, recordings: 9 });
  register.connection.execute("UPDATE athletes SET content = zeroblob(60)");
  expect(register.verify().problems).toContainEqual(expect.stringContaining("of athletes does not fit its checksum"));
});

test("the passphrase can be changed: then the new one opens register and backups, and the old one neither", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  await keepDailyBackup(register);
  setPassphrase(register, other);
  register.close();
  await expect(openRegister(register.file, { passphrase })).rejects.toThrow("not the passphrase");
  const again = await testRegister({ file: register.file, passphrase: other });
  expect(again.reads.athletes()).toHaveLength(2);
  expect(again.verify().problems).toEqual([]);
  const [backup = ""] = keptBackups(register.file);
  await expect(openRegister(backup, { passphrase })).rejects.toThrow("not the passphrase");
  const kept = await testRegister({ file: backup, passphrase: other });
  expect(kept.verify().problems).toEqual([]);
});

test("the passphrase can be taken away again", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  await keepDailyBackup(register);
  removePassphrase(register);
  expect(register.encrypted).toBe(false);
  expect(register.verify().problems).toEqual([]);
  const [backup = ""] = keptBackups(register.file);
  expect((await testRegister({ file: backup })).verify().problems).toEqual([]);
  expect(() => removePassphrase(register)).toThrow("The register has no passphrase.");
});

test("fields cannot be moved to another row or register: they are bound to their place", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  const [first, second] = [athleteId(register, secrets.code), athleteId(register, "ZR-0815")];
  register.connection.run(
    "UPDATE athletes SET content = (SELECT content FROM athletes WHERE id = ?), checksum = (SELECT checksum FROM athletes WHERE id = ?) WHERE id = ?",
    first,
    first,
    second,
  );
  expect(register.verify().problems.join("\n")).toContain(`Row ${second} of athletes`);
  expect(() => register.reads.record("athletes", second)).toThrow("damaged");
});

test("a short passphrase is refused, and letters typed in another way are the same passphrase", async () => {
  const register = await filledRegister();
  expect(() => setPassphrase(register, passphraseBytes("short"))).toThrow("at least 8 letters");
  const composed = "Bjørk og åker".normalize("NFC");
  setPassphrase(register, passphraseBytes(composed));
  register.lock();
  register.unlock(passphraseBytes(composed.normalize("NFD")));
  expect(register.locked).toBe(false);
});
