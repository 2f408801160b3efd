import { copyFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { deflateSync } from "node:zlib";
import { describe, expect, test } from "vitest";
import { keepDailyBackup, makeDailyBackup } from "../../../electron/register/backups.ts";
import { eraseRecords } from "../../../electron/register/erase-records.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { readFact, writeFact } from "../../../electron/register/register-facts.ts";
import { dailyBackups } from "../../../electron/register/register-folder.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { restoreBackup } from "../../../electron/register/restore-backup.ts";
import {
  athleteId,
  filesHolding,
  filledRegister,
  recordingBytes,
  secrets,
  testCircumstances,
  testRegister,
} from "./register-world.ts";

describe("a clock that goes wrong", () => {
  const clockOf = (first: string) => {
    const clock = { day: Date.parse(first) };
    return { clock, circumstances: { who: "tester", now: () => new Date(clock.day) } };
  };
  const aDay = 86_400_000;

  test("backwards never costs the backup that was just made, nor more than the oldest of the others", async () => {
    const { clock, circumstances } = clockOf("2026-11-02T09:00:00Z");
    const register = await filledRegister({ circumstances });
    for (let day = 0; day < 12; day += 1, clock.day += aDay) await keepDailyBackup(register);
    const before = dailyBackups(register.file);
    expect(before).toHaveLength(10);
    clock.day = Date.parse("1970-01-02T09:00:00Z");
    const made = await keepDailyBackup(register);
    expect(existsSync(made ?? "")).toBe(true);
    expect(dailyBackups(register.file)).toEqual([made, ...before.slice(1)]);
  });

  test("far ahead and back again: the days that follow are kept, and the ones ahead go first", async () => {
    const { clock, circumstances } = clockOf("2099-01-01T09:00:00Z");
    const register = await filledRegister({ circumstances });
    for (let day = 0; day < 10; day += 1, clock.day += aDay) await keepDailyBackup(register);
    clock.day = Date.parse("2026-11-02T09:00:00Z");
    for (let day = 0; day < 10; day += 1, clock.day += aDay) {
      expect(existsSync((await keepDailyBackup(register)) ?? "")).toBe(true);
    }
    expect(dailyBackups(register.file).every((path) => path.includes("daily-2026-11-"))).toBe(true);
    expect(register.verify().problems).toEqual([]);
  });

  test("standing still: backups of one second are kept in the order they were made", async () => {
    const { circumstances } = clockOf("2026-11-02T09:00:00Z");
    const register = await filledRegister({ circumstances });
    const made: string[] = [];
    for (let number = 0; number < 13; number += 1) made.push(await makeDailyBackup(register));
    expect(dailyBackups(register.file)).toEqual(made.slice(-10));
  });
});

describe("what was erased", () => {
  const erased = async () => {
    const register = await filledRegister();
    const id = athleteId(register, secrets.code);
    const { content } = register.reads.record("athletes", id)!;
    register.writes.act("athlete changed", (set) => set.change("athletes", id, { ...content, note: "n" }));
    register.writes.moveToBin({ kind: "athletes", id });
    const { writes } = register;
    eraseForGood(register, [{ kind: "athletes", id }]);
    return { register, id, writes };
  };

  test("does not come back by undoing or doing again, not even for who kept hold of the steps of before", async () => {
    const { register, id, writes } = await erased();
    expect(register.writes.undoAction).toBeUndefined();
    expect(() => register.writes.undo()).toThrow("There is nothing to undo.");
    for (const step of ["undo", "redo"] as const) expect(() => writes[step]()).toThrow(/erased since|nothing to do/);
    expect(register.reads.record("athletes", id)).toBeUndefined();
    expect(filesHolding(dirname(register.file), secrets.name)).toEqual([]);
    expect(register.verify().problems).toEqual([]);
  });

  test("is gone as recordings stand in the file, compressed, and as the list, in every file and after closing", async () => {
    const { register } = await erased();
    register.close();
    const folder = dirname(register.file);
    const kept = deflateSync(recordingBytes(31));
    expect(filesHolding(folder, kept.subarray(40, 200))).toEqual([register.file]);
    for (const seed of [11, 12, 13, 21, 22, 23]) {
      const compressed = deflateSync(recordingBytes(seed));
      for (const part of [compressed.subarray(40, 200), compressed.subarray(-60, -8), recordingBytes(seed)]) {
        expect(filesHolding(folder, part), `recording ${seed}`).toEqual([]);
      }
    }
  });

  test("from a register that was opened locked is finished when it is unlocked", async () => {
    const register = await filledRegister();
    setPassphrase(register, passphraseBytes("nine grey geese"));
    await keepDailyBackup(register);
    const id = athleteId(register, secrets.code);
    register.writes.moveToBin({ kind: "athletes", id });
    const { store, journal } = register.contents;
    store.connection.transaction(() => {
      eraseRecords(store, journal, [{ kind: "athletes", id }], register.circumstances);
      writeFact(store.connection, "unfinishedErasure", { records: [{ kind: "athletes", id }] });
    });
    register.close();
    const again = await testRegister({ file: register.file });
    expect(readFact(again.connection, "unfinishedErasure")).toBeDefined();
    again.unlock(passphraseBytes("nine grey geese"));
    expect(readFact(again.connection, "unfinishedErasure")).toBeUndefined();
    const [backup = ""] = dailyBackups(again.file);
    again.close();
    const kept = await testRegister({ file: backup, passphrase: passphraseBytes("nine grey geese") });
    expect(kept.reads.athletes().map(({ name }) => name)).toEqual([secrets.otherName]);
  });
});

test("undoing after a restoration has nothing to take back: the steps of before belong to other content", async () => {
  const register = await filledRegister();
  const backup = await makeDailyBackup(register);
  register.writes.act("athlete added", (set) => set.add("athletes", {}, { code: "LATER" }));
  await restoreBackup(register, backup, {});
  expect(register.writes.undoAction).toBeUndefined();
  expect(() => register.writes.undo()).toThrow("There is nothing to undo.");
  register.writes.act("athlete added", (set) => set.add("athletes", {}, { code: "AFTER" }));
  register.writes.undo();
  expect(register.reads.athletes()).toHaveLength(2);
  expect(register.verify().problems).toEqual([]);
});

test("put under a passphrase and killed before the file was cleaned, it is cleaned when next opened, even locked", async () => {
  const register = await filledRegister();
  const folder = dirname(register.file);
  const copy = join(folder, "killed.sqlite");
  const reader = await openRegister(register.file, { waitMilliseconds: 0, circumstances: testCircumstances() });
  register.connection.execute("PRAGMA busy_timeout = 50");
  // Another window reads: the log cannot be emptied, so what stood in the clear is in it still.
  const rows = reader.connection.each("SELECT * FROM recordings");
  rows.next();
  expect(() => setPassphrase(register, passphraseBytes("nine grey geese"))).toThrow(
    "Close that window and open the register again.",
  );
  copyFileSync(register.file, copy);
  copyFileSync(`${register.file}-wal`, `${copy}-wal`);
  rows.return(undefined);
  reader.close();
  register.close();
  const traces = () => filesHolding(folder, secrets.name).filter((path) => path.includes("killed"));
  expect(traces().length).toBeGreaterThan(0);
  const again = await testRegister({ file: copy });
  expect(again.locked).toBe(true);
  expect(traces()).toEqual([]);
  again.unlock(passphraseBytes("nine grey geese"));
  expect(again.reads.athletes()).toHaveLength(2);
  expect(again.verify().problems).toEqual([]);
});

describe("odd contents", () => {
  test("emoji, marks of direction, half a surrogate pair, zeros, and 300,000 letters come back as they went in", async () => {
    const texts = [
      "👩🏽‍⚕️ 🏃🏿‍♀️ 🇳🇴",
      "\u202eabc\u202c \u200fעברית\u200e",
      "a\ud800b\udfffc",
      "a\u0000b\r\nc\u2028",
      "å".repeat(300_000),
    ];
    const register = await testRegister();
    const contents = texts.map((text) => ({ code: `C ${text}`, note: text }));
    const added = contents.map((each) => register.writes.act("athlete added", (set) => set.add("athletes", {}, each)));
    setPassphrase(register, passphraseBytes("nine grey geese"));
    register.close();
    const again = await testRegister({ file: register.file, passphrase: passphraseBytes("nine grey geese") });
    expect(added.map((id) => again.reads.record("athletes", id)?.content)).toEqual(contents);
    for (const text of texts) expect(again.reads.athletes({ text: text.slice(0, 40) })).toHaveLength(1);
    expect(again.verify().problems).toEqual([]);
  });

  test("five hundred recordings in one action, one of them without a byte, are one step that can be undone", async () => {
    const register = await testRegister();
    const session = register.writes.act("recordings imported", (set) => {
      const added = set.add("sessions", {}, { folder: "many" });
      for (let number = 0; number < 500; number += 1) {
        set.addRecording(added, `jump-${number}.csv`, number === 0 ? new Uint8Array() : recordingBytes(number, 3));
      }
      return added;
    });
    const files = register.reads.sessionInput(session)!.files;
    expect(files).toHaveLength(500);
    expect(files.find(({ path }) => path === "jump-0.csv")?.bytes.byteLength).toBe(0);
    register.writes.undo();
    expect(register.reads.sessionInput(session)).toBeUndefined();
    register.writes.redo();
    expect(register.reads.sessionInput(session)!.files).toEqual(files);
    expect(register.verify()).toMatchObject({ problems: [], recordings: 500 });
  });
});

test("what was acknowledged and stands in the log alone is there after the machine stopped without a checkpoint", async () => {
  const register = await filledRegister();
  register.connection.execute("PRAGMA wal_autocheckpoint = 0");
  register.writes.act("athlete added", (set) => set.add("athletes", {}, { code: "LAST" }));
  const stopped = join(dirname(register.file), "stopped.sqlite");
  copyFileSync(register.file, stopped);
  // The disk had written the log only so far: half of a change that was not acknowledged is no change.
  const log = readFileSync(`${register.file}-wal`);
  writeFileSync(`${stopped}-wal`, Buffer.concat([log, log.subarray(32, 32 + 2000)]));
  const again = await testRegister({ file: stopped });
  expect(again.reads.athletes().map(({ code }) => code)).toContain("LAST");
  expect(again.verify().problems).toEqual([]);
  again.close();
  copyFileSync(register.file, stopped);
  writeFileSync(`${stopped}-wal`, log.subarray(0, log.byteLength - 100));
  const cut = await testRegister({ file: stopped });
  expect(cut.verify().problems).toEqual([]);
  expect(cut.reads.athletes().map(({ code }) => code)).toEqual([secrets.code, "ZR-0815"]);
});
