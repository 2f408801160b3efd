import { copyFileSync, readFileSync, statSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, test } from "vitest";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backUpTo } from "../../../electron/register/backups.ts";
import { sha256Of } from "../../../electron/register/checksum.ts";
import { type Connection, numberOf } from "../../../electron/register/connection.ts";
import { leaveNothingBehind } from "../../../electron/register/leave-nothing-behind.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { recordKinds } from "../../../electron/register/record-tables.ts";
import type { Register } from "../../../electron/register/register.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { previewBackup } from "../../../electron/register/restore-backup.ts";
import { filledRegister, testCircumstances, testRegister } from "./register-world.ts";

const passphrase = passphraseBytes("nine grey geese");

function flip(file: string, offset: number): void {
  const bytes = readFileSync(file);
  bytes[offset]! ^= 1 << (offset % 8);
  writeFileSync(file, bytes);
}

function visible(register: Register): string {
  const bytes = register.reads.records("recordings").map((each) => register.reads.recordingBytes(each));
  return JSON.stringify([recordKinds.map((kind) => register.reads.records(kind)), bytes.map((each) => sha256Of(each))]);
}

/** What a register says that has one byte turned: undefined where it noticed nothing. */
async function noticed(file: string, open: { readonly passphrase?: Uint8Array }): Promise<string | undefined> {
  let register: Register;
  try {
    register = await openRegister(file, { circumstances: testCircumstances(), waitMilliseconds: 0 });
  } catch (error) {
    if (error instanceof RequestRefused) return error.message;
    throw error;
  }
  try {
    const problem = register.damage ?? register.verify().problems[0];
    if (problem !== undefined || open.passphrase === undefined) return problem;
    // What the checksums let through must not get past the key.
    register.unlock(open.passphrase);
    return register.verify().problems[0];
  } catch (error) {
    if (error instanceof RequestRefused) return error.message;
    throw error;
  } finally {
    register.close();
  }
}

/** Places of stored values in the file: every value of every row that is long enough to be found again. */
function placesOfValues(connection: Connection, file: string): readonly number[] {
  const bytes = readFileSync(file);
  const places: number[] = [];
  const tables = ["recordingBytes", "athleteLines", "facts", "journal", "journalParts", "journalContents"];
  for (const table of [...recordKinds, ...tables]) {
    for (const row of connection.all(`SELECT * FROM ${table}`)) {
      for (const value of Object.values(row)) {
        const stored =
          typeof value === "string" ? Buffer.from(value) : value instanceof Uint8Array ? Buffer.from(value) : undefined;
        if (stored === undefined || stored.byteLength < 16) continue;
        // The hash before the first entry is all zeros, and so is unused space.
        if (stored.every((byte) => byte === 0)) continue;
        const at = bytes.indexOf(stored.subarray(0, 400));
        // A value that goes on over several pages is found by its beginning.
        if (at >= 0)
          places.push(
            at,
            at + Math.floor(Math.min(stored.byteLength, 400) / 2),
            at + Math.min(stored.byteLength, 400) - 1,
          );
      }
    }
  }
  return places;
}

describe.each([
  ["a plain register", {}],
  ["a register under a passphrase", { passphrase }],
])("in %s", (_what, open: { readonly passphrase?: Uint8Array }) => {
  async function settled(): Promise<{ readonly file: string; readonly places: readonly number[] }> {
    const register = await filledRegister();
    if (open.passphrase !== undefined) setPassphrase(register, open.passphrase);
    leaveNothingBehind(register.connection);
    const places = placesOfValues(register.connection, register.file);
    register.close();
    return { file: register.file, places };
  }

  test("one turned bit in any stored value is noticed", async () => {
    const { file, places } = await settled();
    expect(places.length).toBeGreaterThan(150);
    const copy = join(dirname(file), "flipped.sqlite");
    const every = Math.ceil(places.length / 60);
    for (const place of places.filter((_, index) => index % every === 0)) {
      copyFileSync(file, copy);
      flip(copy, place);
      expect(await noticed(copy, open), `byte ${place}`).toBeTypeOf("string");
    }
  });
});

test("one turned bit in the bytes of a recording is noticed without the key", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  leaveNothingBehind(register.connection);
  const stored = Object.values(register.connection.all("SELECT * FROM recordingBytes")[0]!)
    .filter((value) => value instanceof Uint8Array)
    .toSorted((one, other) => other.byteLength - one.byteLength)[0]!;
  register.close();
  const place = readFileSync(register.file).indexOf(stored.subarray(0, 400));
  expect(place).toBeGreaterThan(0);
  flip(register.file, place + 200);
  const locked = await testRegister({ file: register.file, create: false });
  expect(locked.verify().problems).toContainEqual(expect.stringContaining("do not fit their checksum"));
});

test("a turned bit in the header or in the description of the tables is refused in a sentence, or changes nothing", async () => {
  const register = await filledRegister();
  const before = visible(register);
  leaveNothingBehind(register.connection);
  register.close();
  const bytes = readFileSync(register.file);
  const copy = join(dirname(register.file), "flipped.sqlite");
  // SQLite's file format: schema format number at 44, user version at 60; then two columns of a table.
  const column = bytes.indexOf("checksum BLOB NOT NULL");
  expect(column).toBeGreaterThan(0);
  for (const offset of [47, 63, column + 1, bytes.indexOf("binned INTEGER") + 2]) {
    copyFileSync(register.file, copy);
    flip(copy, offset);
    expect(await noticed(copy, {}), `byte ${offset}`).toBeTypeOf("string");
  }
  for (let offset = 16; offset < 100; offset += 1) {
    copyFileSync(register.file, copy);
    flip(copy, offset);
    if ((await noticed(copy, {})) !== undefined) continue;
    const opened = await testRegister({ file: copy });
    expect(visible(opened), `byte ${offset}`).toBe(before);
    opened.close();
  }
});

test("a turned bit in unused space changes nothing: every record reads as before", async () => {
  const register = await filledRegister();
  const before = visible(register);
  leaveNothingBehind(register.connection);
  const pageBytes = numberOf(register.connection.one("PRAGMA page_size")!, "page_size");
  const root = numberOf(
    register.connection.one("SELECT rootpage FROM sqlite_schema WHERE name = 'protocols'")!,
    "rootpage",
  );
  register.close();
  // The empty table of protocols: a page that holds eight bytes of header and nothing else.
  for (const within of [100, 2000, pageBytes - 1]) {
    flip(register.file, (root - 1) * pageBytes + within);
    expect(await noticed(register.file, {})).toBeUndefined();
  }
  const again = await testRegister({ file: register.file });
  expect(visible(again)).toBe(before);
});

test("a turned bit anywhere in the file is either noticed or changes nothing", async () => {
  const register = await filledRegister();
  const before = visible(register);
  leaveNothingBehind(register.connection);
  register.close();
  const size = statSync(register.file).size;
  const copy = join(dirname(register.file), "flipped.sqlite");
  let noticedCount = 0;
  for (let offset = 7; offset < size; offset += 1499) {
    copyFileSync(register.file, copy);
    flip(copy, offset);
    if ((await noticed(copy, {})) !== undefined) {
      noticedCount += 1;
      continue;
    }
    const opened = await testRegister({ file: copy });
    expect(visible(opened), `byte ${offset}`).toBe(before);
    opened.close();
  }
  expect(noticedCount).toBeGreaterThan(8);
});

test("one turned bit anywhere in an archive, plain or sealed, is noticed and nothing of it is used", async () => {
  const register = await filledRegister();
  const other = await testRegister();
  const folder = dirname(register.file);
  for (const seal of [undefined, passphrase]) {
    const archive = join(folder, `archive-${seal === undefined ? "plain" : "sealed"}`);
    writeArchive(register, archive, seal === undefined ? {} : { passphrase: seal });
    const size = readFileSync(archive).byteLength;
    const copy = `${archive}-flipped`;
    // Opening a sealed one takes a noticeable time by design, so there are fewer places.
    const step = Math.ceil(size / (seal === undefined ? 300 : 5));
    const offsets = new Set(
      seal === undefined
        ? [...Array(12).keys(), size - 1, size - 20, size - 70, size - 100, size - 130]
        : [0, 9, 40, 150, size - 1],
    );
    for (let offset = step >> 1; offset < size; offset += step) offsets.add(offset);
    for (const offset of offsets) {
      copyFileSync(archive, copy);
      flip(copy, offset);
      await expect(mergeArchive(other, copy, seal), `byte ${offset} of ${size}`).rejects.toThrow(RequestRefused);
    }
  }
  expect(other.reads.athletes()).toEqual([]);
  expect(other.reads.journal(5)).toHaveLength(1);
});

test("a backup under a passphrase refuses the wrong one, a turned bit, and being cut off at any length", async () => {
  const register = await filledRegister();
  const backup = join(dirname(register.file), "elsewhere.backup");
  await backUpTo(register, backup, passphrase);
  await expect(previewBackup(register, backup, { file: passphrase })).resolves.toMatchObject({ recordings: 9 });
  await expect(previewBackup(register, backup, { file: passphraseBytes("nine grey goose") })).rejects.toThrow(
    "The passphrase is another one",
  );
  await expect(previewBackup(register, backup, {})).rejects.toThrow("This backup is under a passphrase");
  const whole = readFileSync(backup);
  const copy = `${backup}-altered`;
  const places = [1, 2, 3, 4].map((part) => Math.floor((whole.byteLength * part) / 5));
  for (const offset of [8, 20, ...places, whole.byteLength - 1]) {
    writeFileSync(copy, whole);
    flip(copy, offset);
    await expect(previewBackup(register, copy, { file: passphrase }), `byte ${offset}`).rejects.toThrow(RequestRefused);
  }
  for (const length of [0, 7, 12, 100, 65_536, whole.byteLength - 1]) {
    writeFileSync(copy, whole.subarray(0, length));
    await expect(previewBackup(register, copy, { file: passphrase }), `${length} bytes`).rejects.toThrow(
      RequestRefused,
    );
  }
});
