import { chmodSync, statSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { openRegister } from "../../../electron/register/open-register.ts";
import { runProgram, startProgram } from "./child-program.ts";
import { filledRegister, temporaryFolder, testCircumstances, testRegister } from "./register-world.ts";

const heldOpen = `
const held = await register.openRegister(file, { create: true });
held.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "HELD" }));
process.stdout.write("open\\n");
setInterval(() => undefined, 1000);
`;

test("a second program on the same register reads what the first has written, and says why it cannot write", async () => {
  const file = join(temporaryFolder(), "register.sqlite");
  await startProgram(heldOpen, [file]);
  const second = await testRegister({ file, waitMilliseconds: 50 });
  expect(second.readOnlyBecause).toBe(
    "Another window or program has this register open, so it is open for reading only.",
  );
  expect(second.reads.athletes().map(({ code }) => code)).toEqual(["HELD"]);
  expect(second.verify().problems).toEqual([]);
  expect(() => second.writes).toThrow(`${second.readOnlyBecause} Nothing was changed.`);
});

test("the lock ends with its program, however that ends: nothing stale is left", async () => {
  const file = join(temporaryFolder(), "register.sqlite");
  const first = await startProgram(heldOpen, [file]);
  await first.kill();
  const second = await testRegister({ file, waitMilliseconds: 0 });
  expect(second.readOnlyBecause).toBeUndefined();
  expect(second.reads.athletes().map(({ code }) => code)).toEqual(["HELD"]);
});

test("within one program too, a second opening reads only, until the first is closed", async () => {
  const first = await filledRegister();
  const second = await openRegister(first.file, { waitMilliseconds: 0, circumstances: testCircumstances() });
  expect(second.readOnlyBecause).toBeDefined();
  second.close();
  // The second opening and closing has not cost the first its lock.
  const elsewhere = runProgram(
    "const open = await register.openRegister(file, { waitMilliseconds: 0 }); process.stdout.write(String(open.readOnlyBecause)); open.close();",
    [first.file],
  );
  expect(elsewhere.out).toContain("open for reading only");
  first.close();
  const third = await testRegister({ file: first.file, waitMilliseconds: 0 });
  expect(third.readOnlyBecause).toBeUndefined();
});

test.skipIf(process.platform === "win32")("everything the register writes is for its owner alone", async () => {
  const register = await filledRegister();
  register.close();
  chmodSync(register.file, 0o644);
  const again = await testRegister({ file: register.file });
  again.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "NEW" }));
  const { keepDailyBackup } = await import("../../../electron/register/backups.ts");
  const backup = await keepDailyBackup(again);
  const files = [again.file, `${again.file}-wal`, `${again.file}-shm`, `${again.file}-lock`, backup ?? ""];
  expect(files.map((file) => statSync(file).mode & 0o777)).toEqual(files.map(() => 0o600));
  expect(statSync(`${again.file}-backups`).mode & 0o777).toBe(0o700);
});
