import { randomBytes } from "node:crypto";
import { chmodSync, chownSync, copyFileSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { runProgram } from "./child-program.ts";
import { filledRegister, foundSession, secrets, temporaryFolder, testRegister } from "./register-world.ts";

/** A session too large for what little room there is. */
function largeSession() {
  // Random bytes: compression makes nothing of them.
  const noise = randomBytes(400_000);
  return { ...foundSession({ code: "LARGE" }, 5), files: [recordingFile("jump-1.csv", noise)] };
}

test("a full disk refuses an import in a sentence and leaves nothing of it", async () => {
  const register = await filledRegister();
  const { page_count } = register.connection.one("PRAGMA page_count")!;
  register.connection.execute(`PRAGMA max_page_count = ${Number(page_count) + 10}`);
  expect(() => importSession(register, largeSession())).toThrow(
    "The disk is full. Nothing of this was written. Make room and do it again.",
  );
  expect(register.reads.athletes()).toHaveLength(2);
  expect(register.verify().problems).toEqual([]);
  register.connection.execute("PRAGMA max_page_count = 1000000");
  importSession(register, largeSession());
  expect(register.reads.athletes()).toHaveLength(3);
});

test("where files may not grow, importing, backing up and exporting each say so, and nothing is half-written", async () => {
  const register = await filledRegister();
  register.close();
  const folder = dirname(register.file);
  const before = readdirSync(folder).toSorted();
  const body = `
const { randomBytes, createHash } = await import("node:crypto");
const open = await register.openRegister(file);
const bytes = randomBytes(400_000);
const files = [{ path: "jump.csv", bytes, sha256: createHash("sha256").update(bytes).digest("hex") }];
const tries = [
  () => register.importSession(open, { folder: "large", files, unreadable: [], descriptionFindings: [], description: { athlete: { code: "LARGE" } } }),
  () => register.backUpTo(open, other + "/copy.sqlite", undefined),
  () => register.writeArchive(open, other + "/sub/archive.zip"),
];
for (const each of tries) {
  try { await each(); process.stdout.write("done\\n"); } catch (error) { process.stdout.write(error.name + ": " + error.message + "\\n"); }
}
process.stdout.write(open.verify().problems.join() + "." + open.reads.athletes().length + "\\n");
open.close();
`;
  // Blocks of 512 bytes in a POSIX shell: 150 KB are less than the register has.
  const { code, out, err } = runProgram(body, [register.file, folder], "ulimit -f 300;");
  expect(err).toBe("");
  expect(code).toBe(0);
  const [imported, backedUp, exported, after] = out.split("\n");
  expect(imported).toMatch(
    /^RequestRefused: The disk (is full|could not be written to or read from).*Nothing of this was written\./,
  );
  expect(backedUp).toMatch(/^RequestRefused: .*(disk|written)/);
  expect(exported).toMatch(/^RequestRefused: .*archive.zip was not written: its folder is not there/);
  expect(after).toBe(".2");
  expect(readdirSync(folder).filter((name) => !before.includes(name) && !name.endsWith("-lock"))).toEqual([]);
  const again = await testRegister({ file: register.file });
  expect(again.verify().problems).toEqual([]);
  expect(again.reads.athletes().map(({ name }) => name)).toEqual([secrets.name, secrets.otherName]);
});

test("a transaction that fails says what went wrong alone; what is true of the whole is said by the action around it", async () => {
  const register = await filledRegister();
  const { connection, writes } = register;
  const { page_count } = connection.one("PRAGMA page_count")!;
  connection.execute(`PRAGMA max_page_count = ${Number(page_count) + 10}`);
  const fill = () => connection.run("INSERT INTO facts VALUES ('filler', zeroblob(4000000), x'00')");
  expect(() => connection.transaction(fill)).toThrow(/^The disk is full\. Make room and do it again\.$/);
  // Of two actions that last together, the second fails: neither is there, and that is said once.
  const both = () =>
    writes.whole(() => {
      writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "FIRST" }));
      importSession(register, largeSession());
    });
  expect(both).toThrow(/^The disk is full\. Nothing of this was written\. Make room and do it again\.$/);
  expect(register.reads.athletes()).toHaveLength(2);
});

const asNobody = `
if (process.getuid() === 0) { process.setgid(65534); process.setuid(65534); }
try {
  const open = await register.openRegister(file, { create: true, waitMilliseconds: 0 });
  process.stdout.write(open.readOnlyBecause + "|" + open.reads.athletes().length + "|" + open.verify().problems.length + "\\n");
  try { open.writes; } catch (error) { process.stdout.write(error.message + "\\n"); }
  open.close();
} catch (error) { process.stdout.write(error.name + ": " + error.message + "\\n"); }
`;

test.skipIf(process.platform === "win32")(
  "in a folder that may not be written to, a register opens for reading only and says so",
  async () => {
    const register = await filledRegister();
    register.close();
    const folder = dirname(register.file);
    const before = readFileSync(register.file);
    const names = readdirSync(folder);
    chmodSync(register.file, 0o444);
    chmodSync(folder, 0o555);
    const { out, err } = runProgram(asNobody, [register.file]);
    chmodSync(folder, 0o755);
    const because = "The register's file or folder may not be written to by this user, so it is open for reading only.";
    expect(err).toBe("");
    expect(out).toBe(`${because}|2|0\n${because} Nothing was changed.\n`);
    expect(readFileSync(register.file).equals(before)).toBe(true);
    expect(readdirSync(folder)).toEqual(names);
  },
);

test.skipIf(process.platform === "win32")(
  "a new register cannot be made there, and another's register cannot be read",
  async () => {
    const folder = temporaryFolder();
    chmodSync(folder, 0o555);
    const { out } = runProgram(asNobody, [join(folder, "new.sqlite")]);
    chmodSync(folder, 0o755);
    expect(out).toMatch(/^RequestRefused: /);
    expect(readdirSync(folder)).toEqual([]);
    const register = await filledRegister();
    register.close();
    expect(statSync(register.file).mode & 0o777).toBe(0o600);
  },
);

test.skipIf(process.platform === "win32")(
  "a log that was left behind is never passed over: where it cannot be taken in, that is said, and a copy holds all",
  async () => {
    const register = await filledRegister();
    register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "LAST" }));
    const folder = temporaryFolder();
    const file = join(folder, "register.sqlite");
    for (const ending of ["", "-wal"]) {
      copyFileSync(`${register.file}${ending}`, `${file}${ending}`);
      chmodSync(`${file}${ending}`, 0o444);
    }
    chmodSync(folder, 0o555);
    const { out } = runProgram(asNobody, [file]);
    chmodSync(folder, 0o755);
    expect(out).toBe(
      "RequestRefused: The register was not closed and its last changes stand in register.sqlite-wal, which can only be taken in where this user may write. Copy both files to such a folder and open the register there.\n",
    );
    chmodSync(file, 0o600);
    chmodSync(`${file}-wal`, 0o600);
    const again = await testRegister({ file });
    expect(again.reads.athletes().map(({ code }) => code)).toContain("LAST");
  },
);

test.skipIf(process.platform === "win32")(
  "where the lock may not be opened by this user, a register is open for reading only",
  async () => {
    const register = await filledRegister();
    register.close();
    if (process.getuid?.() === 0) {
      // All but the lock belongs to the user that the program becomes.
      for (const path of [dirname(register.file), register.file]) chownSync(path, 65534, 65534);
    }
    chmodSync(`${register.file}-lock`, 0o000);
    const { out } = runProgram(asNobody, [register.file]);
    expect(out).toContain("so it is open for reading only.|2|0");
  },
);
