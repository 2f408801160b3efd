import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { deflateSync } from "node:zlib";
import { expect, test } from "vitest";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backUpTo, keepDailyBackup } from "../../../electron/register/backups.ts";
import { Connection } from "../../../electron/register/connection.ts";
import { eraseRecords } from "../../../electron/register/erase-records.ts";
import { eraseForGood, previewErasure } from "../../../electron/register/erasing/erase-for-good.ts";
import type { Register } from "../../../electron/register/register.ts";
import { writeFact } from "../../../electron/register/register-facts.ts";
import { keptBackups } from "../../../electron/register/register-folder.ts";
import { athleteId, filesHolding, filledRegister, recordingBytes, secrets, testRegister } from "./register-world.ts";

/** As `recordingBytes` stands in an unencrypted file: compressed; the head of that says enough. */
const storedBytes = (seed: number) => deflateSync(recordingBytes(seed)).subarray(40, 200);

function traces(register: Register): readonly string[] {
  const folder = dirname(register.file);
  return [secrets.name, secrets.code, storedBytes(11), storedBytes(23)].flatMap((each) => filesHolding(folder, each));
}

async function withPast(): Promise<Register> {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const id = athleteId(register, secrets.code);
  const { content } = register.reads.record("athletes", id)!;
  register.writes.act("athlete changed", (changes) =>
    changes.change("athletes", id, { ...content, note: "left ankle" }),
  );
  register.writes.moveToBin({ kind: "athletes", id });
  return register;
}

test("erasing leaves no name, code or recording in the register, its write-ahead log or its backups", async () => {
  const register = await withPast();
  const [{ id } = { id: "" }] = register.reads.bin();
  // The same search finds all of it before: it can find.
  expect(new Set(traces(register).map((path) => path.slice(dirname(register.file).length).split("/")[1]))).toEqual(
    new Set(["register.sqlite-wal", "register.sqlite-backups"]),
  );
  eraseForGood(register, [{ kind: "athletes", id }]);
  expect(traces(register)).toEqual([]);
  expect(register.reads.athletes().map(({ name }) => name)).toEqual([secrets.otherName]);
  expect(filesHolding(dirname(register.file), secrets.otherName).length).toBeGreaterThan(1);
});

test("afterwards the register and its backups verify, and the journal keeps that an erasure took place", async () => {
  const register = await withPast();
  const [root] = register.reads.bin();
  eraseForGood(register, [root!]);
  expect(register.verify()).toMatchObject({ problems: [], contentsChecked: true });
  expect(register.reads.journal(1)).toMatchObject([{ action: "erased", who: "tester" }]);
  const [backup = ""] = keptBackups(register.file);
  const restored = await testRegister({ file: backup });
  expect(restored.verify().problems).toEqual([]);
  expect(restored.reads.athletes().map(({ name }) => name)).toEqual([secrets.otherName]);
});

test("what is not in the bin cannot be erased", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  expect(() => eraseForGood(register, [{ kind: "athletes", id }])).toThrow("Only what lies in the bin can be erased");
  expect(register.reads.athletes()).toHaveLength(2);
});

test("what an erasure would remove, and the copies it cannot reach, are named before", async () => {
  const register = await filledRegister();
  const folder = dirname(register.file);
  await backUpTo(register, join(folder, "elsewhere.sqlite"), undefined);
  const id = athleteId(register, secrets.code);
  writeArchive(register, join(folder, "one.zip"), { athlete: id });
  await keepDailyBackup(register);
  expect(previewErasure(register, [{ kind: "athletes", id }])).toEqual({
    athletes: 1,
    sessions: 2,
    recordings: 6,
    // Two trials, and the note of where this athlete's archive went.
    others: 3,
    backups: 1,
    copiesElsewhere: [
      expect.stringContaining(join(folder, "elsewhere.sqlite")),
      expect.stringContaining(join(folder, "one.zip")),
    ],
  });
});

test("an erasure that broke off after its transaction is finished when the register is opened again", async () => {
  const register = await withPast();
  const [root] = register.reads.bin();
  const { store, journal } = register.contents;
  store.connection.transaction(() => {
    eraseRecords(store, journal, [root!], register.circumstances);
    writeFact(store.connection, "unfinishedErasure", { records: [{ kind: "athletes", id: root!.id }] });
  });
  register.close();
  const [backup = ""] = keptBackups(register.file);
  expect(readFileSync(backup).includes(secrets.name)).toBe(true);
  const again = await testRegister({ file: register.file });
  expect(traces(again)).toEqual([]);
  expect(again.verify().problems).toEqual([]);
});

test("where another window keeps reading, that is said, and the erasure is finished at a later opening", async () => {
  const register = await withPast();
  const [root] = register.reads.bin();
  // How long it waits for the other window is not what is tested.
  register.connection.execute("PRAGMA busy_timeout = 50");
  const reader = new Connection(register.file, { readOnly: true });
  const rows = reader.each("SELECT * FROM recordings");
  rows.next();
  const { erased, remains } = eraseForGood(register, [root!]);
  expect(erased).toMatchObject({ athletes: 1 });
  expect(remains.join()).toContain("another window is reading the register");
  expect(register.unfinishedErasure).toContain("An erasure is not finished");
  rows.return(undefined);
  reader.close();
  register.close();
  const again = await testRegister({ file: register.file });
  expect(again.earlierErasure).toMatchObject({ remains: [] });
  expect(again.unfinishedErasure).toBeUndefined();
  expect(traces(again)).toEqual([]);
  expect(again.verify().problems).toEqual([]);
});

test("a session given to another athlete stays, and its past no longer names the one who was erased", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  const heir = athleteId(register, "ZR-0815");
  const [first] = register.reads.athletePage(id)!.sessions;
  const { content } = first!.session;
  register.writes.act("session changed", (changes) =>
    changes.change("sessions", first!.session.id, { ...content, athleteAsStated: { code: secrets.code } }),
  );
  register.writes.act("session changed", (changes) =>
    changes.change("sessions", first!.session.id, content, { athlete: heir }),
  );
  register.writes.moveToBin({ kind: "athletes", id });
  eraseForGood(register, [{ kind: "athletes", id }]);
  expect(register.reads.athletePage(heir)?.sessions).toHaveLength(2);
  expect(filesHolding(dirname(register.file), secrets.code)).toEqual([]);
  expect(register.verify().problems).toEqual([]);
});

test("after an erasure the file has no free page that could hold anything of before", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  register.writes.moveToBin({ kind: "athletes", id });
  eraseForGood(register, [{ kind: "athletes", id }]);
  const connection = new Connection(register.file, { readOnly: true });
  expect(connection.one("PRAGMA freelist_count")).toEqual({ freelist_count: 0 });
  connection.close();
});

test("a session that a backup knows as another athlete's is erased from that backup too", async () => {
  const register = await filledRegister();
  const [wrong, right] = [athleteId(register, "ZR-0815"), athleteId(register, secrets.code)];
  await keepDailyBackup(register);
  const [session] = register.reads.athletePage(wrong)!.sessions;
  register.writes.act("session changed", (changes) =>
    changes.change("sessions", session!.session.id, session!.session.content, { athlete: right }),
  );
  register.writes.moveToBin({ kind: "athletes", id: right });
  const certificate = eraseForGood(register, [{ kind: "athletes", id: right }]);
  expect(filesHolding(dirname(register.file), storedBytes(31))).toEqual([]);
  expect(certificate.files.flatMap(({ found }) => found)).toEqual([]);
});

test("an erasure that was not finished is finished together with the next one", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const keys = [secrets.code, "ZR-0815"].map((code) => ({ kind: "athletes", id: athleteId(register, code) }) as const);
  const { store, journal } = register.contents;
  store.connection.transaction(() => {
    eraseRecords(store, journal, [keys[0]!], register.circumstances);
    writeFact(store.connection, "unfinishedErasure", { records: [keys[0]!] });
  });
  eraseForGood(register, [keys[1]!], { alsoOutsideBin: true });
  expect([secrets.name, secrets.otherName].flatMap((name) => filesHolding(dirname(register.file), name))).toEqual([]);
});
