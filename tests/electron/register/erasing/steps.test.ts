import { readFileSync } from "node:fs";
import { basename, dirname } from "node:path";
import { expect, onTestFinished, test, vi } from "vitest";
import { MachineTrouble } from "../../../../electron/refusals/request-refused.ts";
import { keepDailyBackup } from "../../../../electron/register/backups.ts";
import type { Connection } from "../../../../electron/register/connection.ts";
import { eraseForGood, finishErasure } from "../../../../electron/register/erasing/erase-for-good.ts";
import type { Register } from "../../../../electron/register/register.ts";
import { keptBackups } from "../../../../electron/register/register-folder.ts";
import { tellSteps } from "../../../../electron/register/steps.ts";
import { athleteId, filesHolding, filledRegister, secrets } from "../register-world.ts";

const rootOf = (register: Register) => ({ kind: "athletes", id: athleteId(register, secrets.code) }) as const;
const erase = (register: Register) => eraseForGood(register, [rootOf(register)], { alsoOutsideBin: true });
const remnants = (register: Register) =>
  [secrets.name, secrets.code].flatMap((each) => filesHolding(dirname(register.file), each));

/** Lets one statement fail as it does where there is no room, once. */
function withoutRoomFor(connection: Connection, statement: string): void {
  const execute = connection.execute.bind(connection);
  let isFull = true;
  vi.spyOn(connection, "execute").mockImplementation((sql) => {
    if (!isFull || sql !== statement) return execute(sql);
    isFull = false;
    throw new MachineTrouble("The disk is full.", "Make room and do it again.");
  });
}

test("an athlete whom the disk has no room to erase is where they were: in the list, and not in the bin", async () => {
  const register = await filledRegister();
  const run = register.connection.run.bind(register.connection);
  // The last thing an erasure writes: whatever was written apart from it would stay.
  const spied = vi.spyOn(register.connection, "run").mockImplementation((sql, ...values) => {
    if (values[0] === "unfinishedErasure") throw new MachineTrouble("The disk is full.", "Make room and do it again.");
    run(sql, ...values);
  });
  expect(() => erase(register)).toThrow("The disk is full. Nothing of this was written.");
  expect(register.reads.athletes()).toHaveLength(2);
  expect(register.reads.bin()).toEqual([]);
  expect(register.reads.journal(1)[0]?.action).not.toBe("moved to the bin");
  expect(register.unfinishedErasure).toBeUndefined();
  spied.mockRestore();
  expect(erase(register).remains).toEqual([]);
  expect(remnants(register)).toEqual([]);
});

test("without room to write the file anew nothing of the athlete is left in it either, and what remains is said", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  withoutRoomFor(register.connection, "VACUUM");
  const certificate = erase(register);
  expect(certificate.remains).toEqual([
    expect.stringMatching(
      /overwritten with zeros in the register's file, but the file could not be written anew.*The disk is full\./,
    ),
  ]);
  expect(certificate.remains.join()).not.toContain("Nothing of this was written");
  expect(certificate.files.flatMap(({ found }) => found)).toEqual([]);
  expect(certificate.writtenAnew).toEqual(keptBackups(register.file));
  expect(remnants(register)).toEqual([]);
  expect(register.unfinishedErasure).toContain("An erasure is not finished");
  expect(finishErasure(register)).toMatchObject({ remains: [] });
  expect(register.unfinishedErasure).toBeUndefined();
  expect(register.connection.one("PRAGMA freelist_count")).toEqual({ freelist_count: 0 });
});

test("a backup that cannot be written anew just now is said to hold the athlete still, and is finished by another try", async () => {
  const register = await filledRegister();
  await keepDailyBackup(register);
  const [backup = ""] = keptBackups(register.file);
  onTestFinished(() => tellSteps(undefined));
  tellSteps((step) => {
    if (step === "backup written beside") throw new MachineTrouble("The disk is full.", "Make room and do it again.");
  });
  const certificate = erase(register);
  tellSteps(undefined);
  expect(certificate.remains).toEqual([
    expect.stringContaining(`The backup ${basename(backup)} still holds what was erased.`),
  ]);
  expect(certificate.files.find(({ path }) => path === backup)?.found).toEqual(
    expect.arrayContaining(["code", "name", "recording"]),
  );
  expect(readFileSync(backup).includes(secrets.name)).toBe(true);
  expect(finishErasure(register)).toMatchObject({ remains: [], writtenAnew: [register.file, backup] });
  expect(remnants(register)).toEqual([]);
});
