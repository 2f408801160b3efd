import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { backupFolder } from "../../../electron/register/register-folder.ts";
import { filledRegister, recordingBytes, temporaryFolder, testRegister } from "../register/register-world.ts";
import { runInProcess } from "./run-in-process.ts";

const program = fileURLToPath(new URL("../../../electron/command/main.ts", import.meta.url));

/** A folder of sessions whose recordings take about so much room in a register. */
function sessionsOf(kilobytes: number, ...folders: readonly string[]): string {
  const folder = temporaryFolder();
  for (const [at, name] of folders.entries()) {
    mkdirSync(join(folder, name));
    // Of the 13 bytes of a row, compression leaves less than half.
    const rows = Math.ceil((kilobytes * 1000) / folders.length / 6);
    writeFileSync(join(folder, name, "jump.csv"), recordingBytes(at + 7, rows));
    writeFileSync(join(folder, name, "session.json"), JSON.stringify({ athlete: { code: name } }));
  }
  return folder;
}

/** The command line where no file may grow beyond so many kilobytes. */
function runWithin(kilobytes: number, ...typed: readonly string[]) {
  const words = [process.execPath, program, ...typed].map((word) => `'${word}'`).join(" ");
  // Blocks of 512 bytes in a POSIX shell.
  const { status, stdout, stderr } = spawnSync("sh", ["-c", `ulimit -f ${kilobytes * 2}; exec ${words}`], {
    encoding: "utf8",
  });
  return { code: status, out: stdout, err: stderr };
}

test.skipIf(process.platform === "win32")(
  "where only the day's backup has no room, what was imported is listed as imported, and the backup as missing",
  async () => {
    const file = join(temporaryFolder(), "register.sqlite");
    expect((await runInProcess("register", "import", sessionsOf(1200, "AA-1"), "--register", file)).code).toBe(0);
    rmSync(backupFolder(file), { recursive: true });
    // The register's file and its log each stay below the limit; both together, as a backup, do not.
    const { code, out, err } = runWithin(1800, "register", "import", sessionsOf(1000, "BB-2"), "--register", file);
    expect(err).toMatch(
      /^Today's backup could not be made: The disk (is full|could not be)[^.]*\. What is listed was imported\./,
    );
    expect({ code, out }).toEqual({ code: 1, out: "BB-2: added, 1 recording\n" });
    const again = await testRegister({ file });
    expect(again.reads.athletes().map((each) => each.code)).toEqual(["AA-1", "BB-2"]);
    expect(again.verify().problems).toEqual([]);
  },
);

test.skipIf(process.platform === "win32")(
  "where the second of two sessions has no room, it says that nothing of that one was written, and what came in before",
  async () => {
    const file = join(temporaryFolder(), "register.sqlite");
    const folder = sessionsOf(200, "AA-1");
    const large = sessionsOf(3000, "BB-2");
    const { code, out, err } = runWithin(1800, "register", "import", folder, large, "--register", file);
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toMatch(
      /^The disk (is full|could not be)[^.]*\. Nothing of BB-2 was written\. Imported before that: AA-1\./,
    );
    const again = await testRegister({ file });
    expect(again.reads.athletes().map((each) => each.code)).toEqual(["AA-1"]);
  },
);

test("where an archive was written but could not be noted, that is what is said, and not that nothing was written", async () => {
  const register = await filledRegister();
  const { page_count } = register.connection.one("PRAGMA page_count")!;
  register.connection.execute(`PRAGMA max_page_count = ${Number(page_count)}`);
  const place = join(temporaryFolder(), "copy.zip");
  const writing = () => {
    // The first notes of copies may find room in pages that are there.
    for (let times = 0; times < 200; times += 1) writeArchive(register, place);
  };
  expect(writing).toThrow(
    `The disk is full. ${place} was written, but not noted in the register: erasing would not name it.`,
  );
  expect(existsSync(place)).toBe(true);
});
