import { execFileSync, spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { readZip } from "../../../electron/register/archive/read-zip.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { openFile } from "../../../electron/register/byte-source.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { filledRegister, temporaryFolder, testRegister } from "./register-world.ts";

/** What stands before the name of an entry (APPNOTE 4.3.7); it holds the entry's checksum. */
const localHeaderBytes = 30;

const before = join(import.meta.dirname, "archives");

test.each([
  ["plain", "before.zip", undefined],
  ["sealed", "before.sealed", passphraseBytes("eleven plain boats")],
])(
  "an archive that the program wrote before it read them by a library comes in as it went out: %s",
  async (_how, name, passphrase) => {
    const register = await testRegister();
    const merged = await mergeArchive(register, join(before, name), passphrase);
    expect(merged).toMatchObject({ added: 14, recordings: 9 });
    expect(register.reads.athletes().map(({ code, sessions }) => [code, sessions])).toEqual([
      ["E-1", 2],
      ["E-2", 1],
    ]);
    expect(register.verify().problems).toEqual([]);
  },
);

test("the same content makes the same bytes, whatever the time of day and the zone", async () => {
  const register = await filledRegister();
  const [first, second] = [join(temporaryFolder(), "1.zip"), join(temporaryFolder(), "2.zip")];
  const zone = process.env.TZ;
  writeArchive(register, first);
  process.env.TZ = "Pacific/Kiritimati";
  try {
    writeArchive(register, second);
  } finally {
    if (zone === undefined) delete process.env.TZ;
    else process.env.TZ = zone;
  }
  // Everything before the manifest, whose time differs, to the byte.
  const upToManifest = (path: string) => {
    const bytes = readFileSync(path);
    return bytes.subarray(0, bytes.indexOf("manifest.json") - localHeaderBytes).toString("base64");
  };
  expect(upToManifest(first)).toBe(upToManifest(second));
});

const python = spawnSync("python3", ["--version"]);
if (python.status !== 0) console.log("Skipped: there is no python3 here to read an archive with.");

test.skipIf(python.status !== 0)("Python's zipfile finds every checksum right and the same names", async () => {
  const register = await filledRegister();
  const path = join(temporaryFolder(), "for-python.zip");
  writeArchive(register, path);
  const program =
    "import sys, zipfile, json\nz = zipfile.ZipFile(sys.argv[1])\nprint(json.dumps([z.testzip(), z.namelist(), z.comment.decode(), sorted({i.date_time for i in z.infolist()})]))";
  const [bad, names, comment, times] = JSON.parse(execFileSync("python3", ["-c", program, path], { encoding: "utf8" }));
  const source = openFile(path);
  const zip = await readZip(source);
  source.close();
  expect([bad, names, comment]).toEqual([null, zip.names, zip.comment]);
  expect(times).toEqual([[1980, 1, 1, 0, 0, 0]]);
  expect(comment).toMatch(/^SHA-256 of everything before this sentence: [0-9a-f]{64}$/);
});
