import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { keepDailyBackup } from "../../../electron/register/backups.ts";
import { eraseRecords, withDependents } from "../../../electron/register/erase-records.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { writeFact } from "../../../electron/register/register-facts.ts";
import {
  athleteId,
  filesHolding,
  filledRegister,
  foundSession,
  recordingBytes,
  secrets,
  temporaryFolder,
  testRegister,
} from "../register/register-world.ts";
import { runInProcess } from "./run-in-process.ts";

const program = fileURLToPath(new URL("../../../electron/command/main.ts", import.meta.url));

/** A closed register with a backup, its own folder of a person's data beside it. */
async function closedRegister() {
  const register = await filledRegister();
  await keepDailyBackup(register);
  register.close();
  return register.file;
}

const erase = (file: string, ...rest: readonly string[]) =>
  runInProcess("register", "erase", "--register", file, ...rest);
const confirmed = ["--athlete", secrets.code, "--confirm", secrets.code] as const;

test("erasing prints a certificate in lines and as JSON, which names the person nowhere but where the code was typed", async () => {
  const lines = await erase(await closedRegister(), ...confirmed);
  expect(lines).toMatchObject({ code: 0, err: "" });
  expect(lines.out.split("\n")[0]).toBe(
    `Erased. ${secrets.code}: 2 sessions, 6 recordings and 2 other records, also in 1 backup.`,
  );
  expect(lines.out).toContain("Looked for, byte by byte, recordings also compressed: 1 code, 1 name,");
  expect(lines.out).toMatch(/register\.sqlite: none of it\n/);
  expect(lines.out.split("\n").slice(1).join("\n")).not.toContain(secrets.code);
  const file = await closedRegister();
  const { code, out } = await erase(file, ...confirmed, "--format", "json");
  expect(code).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ erased: true, certificate: { remains: [], erased: { athletes: 1 } } });
  expect(out).not.toContain(secrets.code);
});

test("an athlete in the bin is erased by the same command, and found by the code or the identifier", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  register.writes.moveToBin({ kind: "athletes", id });
  register.close();
  expect((await erase(register.file, "--athlete", id)).out).toContain(`${secrets.code}: 2 sessions`);
  expect((await erase(register.file, ...confirmed)).code).toBe(0);
  expect(filesHolding(dirname(register.file), secrets.name)).toEqual([]);
});

test("an erasure that was broken off is finished by the same command, and by the command without a code", async () => {
  for (const typed of [confirmed, []]) {
    const register = await filledRegister();
    await keepDailyBackup(register);
    const { store, journal } = register.contents;
    const root = { kind: "athletes", id: athleteId(register, secrets.code) } as const;
    const records = [...withDependents(store, [root])];
    store.connection.transaction(() => {
      eraseRecords(store, journal, [root], register.circumstances);
      writeFact(store.connection, "unfinishedErasure", { records });
    });
    register.close();
    expect(filesHolding(dirname(register.file), secrets.name)).not.toEqual([]);
    const { code, out } = await erase(register.file, ...typed);
    // It is done, and could not be searched for: that needs eyes.
    expect(code).toBe(1);
    expect(out).toContain("An erasure that was broken off earlier was taken up again");
    expect(out).toContain("Nothing was searched");
    expect(filesHolding(dirname(register.file), secrets.name)).toEqual([]);
    expect(await erase(register.file, ...confirmed)).toMatchObject({
      code: 2,
      err: `There is no athlete ${secrets.code} in the register.\n`,
    });
  }
});

test("without a code and with nothing unfinished, a code is asked for", async () => {
  expect(await erase(await closedRegister())).toMatchObject({ code: 2, err: "--athlete CODE is needed.\n" });
});

/** The command line where no file may grow beyond so many kilobytes, with a folder of data of its own. */
function runWithin(kilobytes: number, data: string, ...typed: readonly string[]) {
  const words = [process.execPath, program, ...typed].map((word) => `'${word}'`).join(" ");
  // Blocks of 512 bytes in a POSIX shell.
  const { status, stdout, stderr } = spawnSync("sh", ["-c", `ulimit -f ${kilobytes * 2}; exec ${words}`], {
    encoding: "utf8",
    env: { ...process.env, COUNTERPOISE_DATA: data },
  });
  return { code: status, out: stdout, err: stderr };
}

test.skipIf(process.platform === "win32")(
  "wherever the disk is full, the athlete is where they were, or the same command finishes it later",
  async () => {
    const made = await filledRegister();
    // The one who stays has far more than the one who goes, so that each step needs another amount of room.
    const large = {
      ...foundSession({ code: "ZR-0815" }, 9),
      files: [recordingFile("jump-1.csv", recordingBytes(99, 100_000))],
    };
    importSession(made, large);
    const own = {
      ...foundSession({ code: secrets.code }, 8),
      files: [recordingFile("jump-1.csv", recordingBytes(88, 20_000))],
    };
    importSession(made, own);
    await keepDailyBackup(made);
    made.close();
    const outcomes = new Set<string>();
    for (const kilobytes of [40, 150, 400, 20_000]) {
      const folder = temporaryFolder();
      const data = join(folder, "data");
      cpSync(dirname(made.file), folder, { recursive: true });
      mkdirSync(data);
      const file = join(folder, "register.sqlite");
      const { code, out, err } = runWithin(kilobytes, data, "register", "erase", "--register", file, ...confirmed);
      const told = `${kilobytes} kB: ${code} ${out}${err}`;
      const after = await testRegister({ file });
      const isThere = after.reads.athletes().some((each) => each.code === secrets.code);
      after.close();
      if (code === 2) {
        outcomes.add("as it was");
        expect(err, told).toContain("Nothing of this was written.");
        expect(isThere, told).toBe(true);
        expect((await erase(file, ...confirmed)).code, told).toBe(0);
      } else {
        outcomes.add(code === 0 ? "finished" : "remains");
        expect(out, told).toContain("Erased.");
        expect(out.includes("Still to be done"), told).toBe(code === 1);
        expect(isThere, told).toBe(false);
      }
      // Opening it without the limit went on with what remained.
      expect(
        [secrets.name, secrets.code].flatMap((each) => filesHolding(folder, each)),
        told,
      ).toEqual([]);
      const whole = await testRegister({ file });
      expect([whole.unfinishedErasure, whole.verify().problems], told).toEqual([undefined, []]);
      whole.close();
    }
    expect([...outcomes].toSorted()).toEqual(["as it was", "finished", "remains"]);
  },
  120_000,
);

test("what the folder of the person's data holds is searched and named, and ends in the code for a look", async () => {
  const data = temporaryFolder();
  writeFileSync(join(data, "of-an-earlier-program.csv"), recordingBytes(11));
  const file = await closedRegister();
  const { status, stdout } = spawnSync(
    process.execPath,
    [program, "register", "erase", "--register", file, ...confirmed],
    { encoding: "utf8", env: { ...process.env, COUNTERPOISE_DATA: data } },
  );
  expect(status).toBe(1);
  expect(stdout).toContain("of-an-earlier-program.csv (or its name) holds a recording or a part of one.");
});
