import { expect, test } from "vitest";
import { makeDailyBackup } from "../../../electron/register/backups.ts";
import { Connection } from "../../../electron/register/connection.ts";
import { restoreBackup } from "../../../electron/register/restore-backup.ts";
import { filledRegister } from "./register-world.ts";

test("what an action was acknowledged for is there for whoever opens the file next, though this program never closes it", async () => {
  const register = await filledRegister();
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "LATER" }));
  const other = new Connection(register.file, { readOnly: true });
  const counts = other.one(
    "SELECT (SELECT count(*) FROM athletes) AS athletes, (SELECT max(sequence) FROM journal) AS last",
  );
  other.close();
  expect(counts).toEqual({ athletes: 3, last: 5 });
});

// A kill of the program cannot show this: what it wrote stays with the system, which a stop of the machine ends too.
test("every commit waits for the disk, also after a restoration", async () => {
  const register = await filledRegister();
  const ways = () => [register.connection.one("PRAGMA synchronous"), register.connection.one("PRAGMA journal_mode")];
  const full = [{ synchronous: 2 }, { journal_mode: "wal" }];
  expect(ways()).toEqual(full);
  await restoreBackup(register, await makeDailyBackup(register), {});
  expect(ways()).toEqual(full);
});
