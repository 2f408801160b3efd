import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { recordingName } from "../../../electron/register/archive/archive-format.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { readZip } from "../../../electron/register/archive/read-zip.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { ZipWriter } from "../../../electron/register/archive/write-zip.ts";
import type { ByteSource } from "../../../electron/register/byte-source.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import {
  athleteId,
  filledRegister,
  foundSession,
  recordingBytes,
  secrets,
  temporaryFolder,
  testRegister,
} from "./register-world.ts";

function sourceOf(bytes: Uint8Array): ByteSource {
  return {
    size: bytes.byteLength,
    read: (offset, length) => bytes.subarray(offset, offset + length),
    close: () => undefined,
  };
}

function zipped(entries: readonly (readonly [string, Uint8Array])[]): Uint8Array {
  const parts: Uint8Array[] = [];
  const zip = new ZipWriter({ write: (bytes) => parts.push(bytes), end: () => undefined });
  for (const [name, bytes] of entries) zip.add(name, bytes);
  zip.finish("that is all", { length: 1, text: () => "." });
  return Buffer.concat(parts);
}

describe("zip files", () => {
  // Written by Python 3.11's zipfile: "hello.txt" → "hello hello hello\n", "sub/ø.txt" → 300 times "a"; both deflated.
  const byPython =
    "UEsDBBQAAAAIAAAAIQA7fIrfCwAAABIAAAAJAAAAaGVsbG8udHh0y0jNyclXyECQXABQSwMEFAAACAgAAAAhAAkZl4kHAAAALAEAAAoAAABzdWIvw7gudHh0S0wcBcQCAFBLAQIUAxQAAAAIAAAAIQA7fIrfCwAAABIAAAAJAAAAAAAAAAAAAACAAQAAAABoZWxsby50eHRQSwECFAMUAAAICAAAACEACRmXiQcAAAAsAQAACgAAAAAAAAAAAAAAgAEyAAAAc3ViL8O4LnR4dFBLBQYAAAAAAgACAG8AAABhAAAAAAA=";

  test("of another program are read", async () => {
    const zip = await readZip(sourceOf(Buffer.from(byPython, "base64")));
    expect(zip.names).toEqual(["hello.txt", "sub/ø.txt"]);
    expect(Buffer.from(zip.read("hello.txt")).toString()).toBe("hello hello hello\n");
    expect(Buffer.from(zip.read("sub/ø.txt")).toString()).toBe("a".repeat(300));
  });

  test("of our own are read back, empty entries and names in any script included", async () => {
    const entries = [
      ["a.csv", recordingBytes(1)],
      ["sub/山田.csv", new Uint8Array(0)],
    ] as const;
    const zip = await readZip(sourceOf(zipped(entries)));
    expect(zip.comment).toBe("that is all.");
    expect(entries.map(([name]) => Buffer.from(zip.read(name)))).toEqual(
      entries.map(([, bytes]) => Buffer.from(bytes)),
    );
  });

  test("with more entries than the old format can count go on as ZIP64", async () => {
    const count = 65_536;
    const entries = Array.from({ length: count }, (_, index) => [`${index}`, Buffer.from([index & 255])] as const);
    const zip = await readZip(sourceOf(zipped(entries)));
    expect(zip.names).toHaveLength(count);
    expect(zip.read("65535")[0]).toBe(65_535 & 255);
  });
});

describe("an archive", () => {
  test("of one athlete holds that athlete alone, and the original files as they were imported", async () => {
    const register = await filledRegister();
    const path = join(temporaryFolder(), "one.zip");
    const contents = writeArchive(register, path, { athlete: athleteId(register, secrets.code) });
    expect(contents.recordings).toBe(6);
    const bytes = readFileSync(path);
    const zip = await readZip(sourceOf(bytes));
    const all = zip.names.map((name) => Buffer.from(zip.read(name)).toString()).join("\n");
    expect(all).toContain(secrets.name);
    expect(all).not.toContain(secrets.otherName);
    const [session] = register.reads.athletePage(athleteId(register, secrets.code))!.sessions;
    const original = zip.read(recordingName(session!.session.id, "jump-2.csv"));
    expect(Buffer.from(original)).toEqual(Buffer.from(recordingBytes(12)));
  });

  test("merged twice comes in once, and what the register says of the same record stands", async () => {
    const register = await filledRegister();
    const path = join(temporaryFolder(), "all.zip");
    const { records } = writeArchive(register, path);
    const other = await testRegister();
    expect(await mergeArchive(other, path)).toMatchObject({
      added: records,
      same: 0,
      kept: 0,
      recordings: 9,
      notes: [],
    });
    const id = athleteId(other, secrets.code);
    const { content } = other.reads.record("athletes", id)!;
    other.writes.act("athlete changed", (changes) => changes.change("athletes", id, { ...content, note: "own words" }));
    expect(await mergeArchive(other, path)).toMatchObject({ added: 0, same: records - 1, kept: 1, recordings: 0 });
    expect(other.reads.record("athletes", id)?.content.note).toBe("own words");
    other.writes.undo();
    other.writes.undo();
    expect(other.reads.athletes()).toEqual([]);
    expect(other.verify().problems).toEqual([]);
  });

  test("joins what was imported from the same folders on two computers", async () => {
    const [first, second] = [await testRegister(), await testRegister()];
    const person = { code: secrets.code, name: secrets.name };
    importSession(first, foundSession(person, 1));
    importSession(first, foundSession(person, 2));
    importSession(second, foundSession(person, 2));
    const path = join(temporaryFolder(), "first.zip");
    writeArchive(first, path);
    expect(await mergeArchive(second, path)).toMatchObject({ recordings: 3 });
    expect(second.reads.athletes()).toMatchObject([{ code: secrets.code, sessions: 2 }]);
    expect(second.verify().problems).toEqual([]);
  });

  test("never joins two people by a code alone", async () => {
    const [first, second] = [await testRegister(), await testRegister()];
    importSession(first, foundSession({ code: "A-1", name: "Ylva Brekke" }, 1));
    importSession(second, foundSession({ code: "A-1", name: "Odd Lerum" }, 2));
    const path = join(temporaryFolder(), "first.zip");
    writeArchive(first, path);
    expect((await mergeArchive(second, path)).notes).toEqual([
      "Two athletes now carry the code A-1; look whether they are one person.",
    ]);
    expect(second.reads.athletes().map(({ name, sessions }) => [name, sessions])).toEqual(
      expect.arrayContaining([
        ["Ylva Brekke", 1],
        ["Odd Lerum", 1],
      ]),
    );
  });

  test("leaves behind what lies in the bin, and can bring back who was erased", async () => {
    const register = await filledRegister();
    const folder = temporaryFolder();
    const before = join(folder, "before.zip");
    writeArchive(register, before);
    const id = athleteId(register, secrets.code);
    register.writes.moveToBin({ kind: "athletes", id });
    const after = join(folder, "after.zip");
    expect(writeArchive(register, after).recordings).toBe(3);
    eraseForGood(register, [{ kind: "athletes", id }]);
    expect(await mergeArchive(register, before)).toMatchObject({ recordings: 6 });
    expect(register.reads.athletes()).toHaveLength(2);
    expect(register.verify().problems).toEqual([]);
  });

  test("that is none is refused in a sentence", async () => {
    const register = await testRegister();
    const path = join(temporaryFolder(), "text.zip");
    writeFileSync(path, zipped([["notes.txt", Buffer.from("no archive of a register")]]));
    await expect(mergeArchive(register, path)).rejects.toThrow("its checksum does not fit. Nothing of it was used.");
    writeFileSync(path, "PK but no zip");
    await expect(mergeArchive(register, path)).rejects.toThrow("it does not end as a zip does");
  });
});
