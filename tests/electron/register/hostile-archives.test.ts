import { createHash, randomUUID } from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { RequestRefused } from "../../../electron/refusals/request-refused.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { readZip } from "../../../electron/register/archive/read-zip.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { ZipWriter } from "../../../electron/register/archive/write-zip.ts";
import { openFile } from "../../../electron/register/byte-source.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { athleteId, filledRegister, foundSession, secrets, temporaryFolder, testRegister } from "./register-world.ts";

const sum = (bytes: Uint8Array) => createHash("sha256").update(bytes).digest("hex");

interface Forgery {
  readonly version?: number;
  readonly listed?: readonly { readonly name: string; readonly bytes: number; readonly sha256: string }[];
}

/** An archive as somebody who knows the format could write it, with every checksum right. */
function forged(entries: readonly (readonly [string, Uint8Array])[], { version = 1, listed }: Forgery = {}): string {
  const path = join(temporaryFolder(), "forged.zip");
  const parts: Uint8Array[] = [];
  const zip = new ZipWriter({ write: (bytes) => parts.push(bytes), end: () => undefined });
  for (const [name, bytes] of entries) zip.add(name, bytes);
  const manifest = {
    format: "counterpoise-register-archive",
    version,
    engine: "0",
    madeAt: "2026-11-02T08:00:00.000Z",
    contents: "register",
    entries: listed ?? entries.map(([name, bytes]) => ({ name, bytes: bytes.byteLength, sha256: sum(bytes) })),
  };
  zip.add("manifest.json", Buffer.from(JSON.stringify(manifest)));
  const text = () => sum(Buffer.concat(parts));
  zip.finish("SHA-256 of everything before this sentence: ", { length: 64, text });
  writeFileSync(path, Buffer.concat(parts));
  return path;
}

const records = (kind: string, ...rows: readonly object[]) =>
  [`records/${kind}.json`, Buffer.from(JSON.stringify(rows))] as const;

const ids = { athlete: randomUUID(), session: randomUUID(), recording: randomUUID() };
const athlete = records("athletes", { id: ids.athlete, references: {}, content: { code: "F-1" } });
const session = records("sessions", {
  id: ids.session,
  references: { athlete: ids.athlete },
  content: { folder: "a" },
});
const bytes = Buffer.from("time (s),force (N)\n");
const recording = (path: string, content: object = {}) =>
  records("recordings", {
    id: ids.recording,
    references: { session: ids.session },
    content: { path, sha256: sum(bytes), byteLength: bytes.byteLength, ...content },
  });
const original = (path: string) => [`recordings/${ids.session}/${path}`, bytes] as const;

function nothingCameIn(register: Register): void {
  expect(register.reads.athletes()).toEqual([]);
  expect(register.reads.journal(5)).toHaveLength(1);
  expect(register.verify().problems).toEqual([]);
}

describe("an archive with every checksum right", () => {
  test("comes in when it keeps to the format: the forger's tools work", async () => {
    const register = await testRegister();
    const path = forged([athlete, session, recording("jump.csv"), original("jump.csv")]);
    expect(await mergeArchive(register, path)).toMatchObject({ added: 3, recordings: 1, notes: [] });
  });

  test.each<readonly [string, readonly (readonly [string, Uint8Array])[], Forgery, RegExp]>([
    [
      "a name that leaves its folder",
      [athlete, session, recording("../../evil.csv"), original("../../evil.csv")],
      {},
      /recordings in the archive are not understood at 0\.content\.path/,
    ],
    [
      "an absolute name",
      [athlete, session, recording("/etc/evil.csv"), original("/etc/evil.csv")],
      {},
      /recordings in the archive are not understood/,
    ],
    [
      "a recording of another length than it says",
      [athlete, session, recording("jump.csv", { byteLength: 7 }), original("jump.csv")],
      {},
      /is not the recording its record describes/,
    ],
    [
      "a recording with another checksum",
      [athlete, session, recording("jump.csv", { sha256: sum(Buffer.from("x")) }), original("jump.csv")],
      {},
      /is not the recording its record describes/,
    ],
    ["a recording without its bytes", [athlete, session, recording("jump.csv")], {}, /The archive lacks recordings/],
    ["a session of nobody it holds", [session], {}, /not complete: one of the sessions belongs to a record/],
    ["an injury of nobody", [records("injuries", { id: randomUUID(), references: {}, content: {} })], {}, /athlete/],
    ["two entries of one name", [athlete, athlete], {}, /list of contents is damaged/],
    ["an entry its manifest does not list", [athlete], { listed: [] }, /does not list/],
    [
      "a manifest that lists what is not there",
      [athlete],
      {
        listed: [
          { name: athlete[0], bytes: athlete[1].byteLength, sha256: sum(athlete[1]) },
          { name: "records/sessions.json", bytes: 2, sha256: sum(Buffer.from("[]")) },
        ],
      },
      /lacks records\/sessions\.json/,
    ],
    [
      "a manifest that lists an entry twice",
      [athlete],
      {
        listed: [1, 2].map(() => ({ name: athlete[0], bytes: athlete[1].byteLength, sha256: sum(athlete[1]) })),
      },
      /lists an entry twice/,
    ],
    [
      "an entry larger than the manifest says, which is not unpacked",
      [["records/athletes.json", Buffer.alloc(10_000_000, 32)]],
      { listed: [{ name: "records/athletes.json", bytes: 10, sha256: sum(Buffer.from("[]")) }] },
      /records\/athletes\.json is damaged/,
    ],
    [
      "an entry that unpacks to a thousand times its bytes",
      [["records/athletes.json", Buffer.alloc(50_000_000, 32)]],
      {},
      /unpacked it would be more than 100 times as large/,
    ],
    ["records that are no list", [["records/athletes.json", Buffer.from("{")]], {}, /is no JSON/],
    ["a newer version", [athlete], { version: 2 }, /it has version 2, which this program does not know/],
  ])("and %s is refused as a whole", async (_what, entries, forgery, sentence) => {
    const register = await testRegister();
    const path = forged(entries, forgery);
    await expect(mergeArchive(register, path)).rejects.toThrow(sentence);
    await expect(mergeArchive(register, path)).rejects.toThrow(RequestRefused);
    nothingCameIn(register);
  });
});

describe("a list of contents that points anywhere", () => {
  /** Where the list begins in a zip of ours: its own place is written 6 bytes before the comment's length. */
  function damaged(change: (zip: Buffer, directory: number) => void): string {
    const path = forged([athlete, session]);
    const zip = readFileSync(path);
    const end = zip.lastIndexOf(Buffer.from([0x50, 0x4b, 5, 6]));
    change(zip, zip.readUInt32LE(end + 16));
    writeFileSync(path, zip);
    return path;
  }
  const listSays = 24;
  const packedBytes = 20;
  const place = 42;
  test.each<readonly [string, (zip: Buffer, directory: number) => void]>([
    ["beyond the file", (zip, at) => zip.writeUInt32LE(0xfffffff0, at + place)],
    ["at a far place that is not given", (zip, at) => zip.writeUInt32LE(0xffffffff, at + place)],
    ["with more packed bytes than the file has", (zip, at) => zip.writeUInt32LE(0x7fffffff, at + packedBytes)],
    ["with 4 GB unpacked", (zip, at) => zip.writeUInt32LE(0xfffffffe, at + listSays)],
  ])("%s is refused in a sentence", async (_what, change) => {
    const source = openFile(damaged(change));
    await expect(
      readZip(source).then((zip) => {
        for (const name of zip.names) zip.read(name);
      }),
    ).rejects.toThrow(RequestRefused);
    source.close();
  });

  test("with far ends of negative or endless places is refused in a sentence", async () => {
    for (const distance of [0n, 0xffff_ffff_ffff_fff0n, 1n << 60n]) {
      const end = Buffer.alloc(22);
      end.writeUInt32LE(0x06054b50, 0);
      end.writeUInt16LE(0xffff, 10);
      const locator = Buffer.alloc(20);
      locator.writeUInt32LE(0x07064b50, 0);
      locator.writeBigUInt64LE(distance, 8);
      for (const file of [end, Buffer.concat([locator, end])]) {
        const path = join(temporaryFolder(), "far.zip");
        writeFileSync(path, file);
        const source = openFile(path);
        await expect(readZip(source)).rejects.toThrow("The archive's list of contents is damaged");
        source.close();
      }
    }
  });
});

test("a sealed file whose beginning asks for an impossible key is refused in a sentence", async () => {
  const register = await filledRegister();
  const path = join(temporaryFolder(), "sealed");
  writeArchive(register, path, { passphrase: passphraseBytes("nine grey geese") });
  const sealed = readFileSync(path);
  const other = await testRegister();
  const altered: readonly (readonly [string, string])[] = [
    ['"N":1024', '"N":1025'],
    ['"N":1024', '"N":0001'],
    ['"N":1024', '"N":1e99'],
    ['"r":8', '"r":9'],
    ['"r":8', '"r":0'],
    ['"noncePrefix":"', '"noncePrefix"="'],
  ];
  for (const [from, to] of altered) {
    const bytes = Buffer.from(sealed);
    const at = bytes.indexOf(from);
    expect(at).toBeGreaterThan(0);
    bytes.write(to, at, "latin1");
    writeFileSync(path, bytes);
    await expect(mergeArchive(other, path, passphraseBytes("nine grey geese")), to).rejects.toThrow(
      "The file's beginning is damaged",
    );
  }
});

test("of an athlete who was changed since, what the register says stands and what is new comes in", async () => {
  const first = await filledRegister();
  const path = join(temporaryFolder(), "one.zip");
  writeArchive(first, path);
  const second = await testRegister();
  await mergeArchive(second, path);
  const id = athleteId(second, secrets.code);
  const { content } = second.reads.record("athletes", id)!;
  second.writes.act("athlete changed", (set) => set.change("athletes", id, { ...content, name: "Another Name" }));
  importSession(first, foundSession({ code: secrets.code, name: secrets.name }, 9));
  writeArchive(first, path);
  const merged = await mergeArchive(second, path);
  expect(merged).toMatchObject({ kept: 1, recordings: 3 });
  expect(merged.notes).toEqual(["One of the athletes is in the register already and differs; the register's stands."]);
  expect(second.reads.athletes({ text: "another" })).toMatchObject([{ sessions: 3 }]);
  expect(second.verify().problems).toEqual([]);
});

test("two computers' recordings of one name in one session are both kept, under names of their own", async () => {
  const [first, second] = [await filledRegister(), await testRegister()];
  const path = join(temporaryFolder(), "shared.zip");
  writeArchive(first, path);
  await mergeArchive(second, path);
  const [shared] = second.reads.athletePage(athleteId(second, secrets.code))!.sessions;
  const add = (register: Register, text: string) =>
    register.writes.act("recordings imported", (set) =>
      set.addRecording(shared!.session.id, "jump-9.csv", Buffer.from(text)),
    );
  add(first, "1.5\n");
  add(second, "2.5\n");
  writeArchive(first, path);
  expect((await mergeArchive(second, path)).notes).toEqual([
    "jump-9.csv is in the session already with other bytes; the archive's came in as jump-9 (2).csv.",
  ]);
  const files = second.reads.sessionInput(shared!.session.id)!.files.slice(-2);
  expect(files.map((each) => [each.path, Buffer.from(each.bytes).toString()])).toEqual([
    ["jump-9 (2).csv", "1.5\n"],
    ["jump-9.csv", "2.5\n"],
  ]);
  // The same archive again brings nothing more.
  expect(await mergeArchive(second, path)).toMatchObject({ added: 0, recordings: 0 });
});

test("recordings that came to share a path, and names that no zip can hold, travel all the same", async () => {
  const register = await testRegister();
  const odd = "jump-\ud800-\u{1f3c3}\u200f.csv";
  const found = { ...foundSession({ code: "S-1" }, 1), files: [recordingFile(odd, bytes)], description: {} };
  const { session: id } = importSession(register, found);
  const add = (text: string) =>
    register.writes.act("recordings imported", (set) => set.addRecording(id, "twin.csv", Buffer.from(text)));
  const first = add("1.5\n");
  register.writes.moveToBin({ kind: "recordings", id: first });
  add("2.5\n");
  register.writes.takeOutOfBin({ kind: "recordings", id: first });
  const path = join(temporaryFolder(), "twins.zip");
  expect(writeArchive(register, path).recordings).toBe(3);
  const other = await testRegister();
  expect((await mergeArchive(other, path)).recordings).toBe(3);
  const files = other.reads.sessionInput(id)!.files;
  expect(new Set(files.map((each) => Buffer.from(each.bytes).toString()))).toEqual(
    new Set([bytes.toString(), "1.5\n", "2.5\n"]),
  );
  expect(files.map((each) => each.path)).toContain(odd);
});
