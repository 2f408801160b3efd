import { createHash } from "node:crypto";
import { join } from "node:path";
import { expect, test } from "vitest";
import { analyzeSession } from "../../../core/analyze.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { resultDocument, resultJson } from "../../../core/sheet/result-document.ts";
import { type FoundSession, readFolder } from "../../../electron/files/read-folder.ts";
import { sampleTracesFolder } from "../../../electron/program/program-folders.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { importSessions } from "../../../electron/register/import-sessions.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { temporaryFolder, testRegister } from "./register-world.ts";

/** Sessions of every kind: a whole battery, one stopped with its gate closed, and files that cannot be read. */
const sampleSessions = readFolder(sampleTracesFolder()).filter(({ folder }) =>
  /doubtful|jonas-ekre\/1|maren-tveitlund\/3/.test(folder),
);

/** Sessions with a fingerprint of their bytes in the place of 22 MB of them. */
function fingerprinted(sessions: readonly FoundSession[]) {
  return sessions.map((session) => ({
    ...session,
    files: session.files.map(({ path, sha256, bytes }) => ({
      path,
      sha256,
      length: bytes.byteLength,
      ofBytes: createHash("sha512").update(bytes).digest("hex"),
    })),
  }));
}

/** The sessions of a register in the order of their folders. */
function sessionsOf(register: Register): readonly FoundSession[] {
  return register.reads
    .records("sessions")
    .map(({ id }) => register.reads.sessionInput(id)!)
    .toSorted((first, second) => (first.folder < second.folder ? -1 : 1));
}

function analysed(sessions: readonly FoundSession[]): string {
  const results = sessions.map((session) => analyzeSession({ ...session, stated: {} }, defaultSettings).result);
  return resultJson(resultDocument(results, defaultSettings));
}

test("folder → register → archive → another register: every stated word and every byte is what it was", async () => {
  const first = await testRegister();
  importSessions(first, sampleSessions);
  expect(fingerprinted(sessionsOf(first))).toEqual(fingerprinted(sampleSessions));
  setPassphrase(first, passphraseBytes("nine grey geese"));
  const archive = join(temporaryFolder(), "register.zip");
  writeArchive(first, archive, { passphrase: passphraseBytes("seven black swans") });
  const second = await testRegister();
  await mergeArchive(second, archive, passphraseBytes("seven black swans"));
  expect(fingerprinted(sessionsOf(second))).toEqual(fingerprinted(sampleSessions));
  expect(second.verify().problems).toEqual([]);
});

test("and the analysis of it is the same, byte for byte", async () => {
  // Two sessions of different kinds: a whole battery, and one that was stopped with its gate closed.
  const some = sampleSessions.filter(({ folder }) => /jonas-ekre\/1|maren-tveitlund\/3/.test(folder));
  expect(some).toHaveLength(2);
  const first = await testRegister();
  importSessions(first, some);
  const archive = join(temporaryFolder(), "register.zip");
  writeArchive(first, archive);
  const second = await testRegister();
  await mergeArchive(second, archive);
  const fromFolder = analysed(some);
  expect(fromFolder.length).toBeGreaterThan(10_000);
  expect(analysed(sessionsOf(first))).toBe(fromFolder);
  expect(analysed(sessionsOf(second))).toBe(fromFolder);
});
