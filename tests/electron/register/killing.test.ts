import { expect, test } from "vitest";
import { startProgram } from "./child-program.ts";
import { killRounds } from "./kill-rounds.ts";
import { filledRegister, secrets, testRegister } from "./register-world.ts";

test("killed at ten random moments of imports, edits, erasures, migrations and backups, nothing acknowledged is lost", async () => {
  const { faults, rounds, acknowledged } = await killRounds(10);
  expect(faults).toEqual([]);
  expect(rounds).toBe(10);
  // It was at work when it was killed.
  expect(acknowledged.noted + acknowledged.imported).toBeGreaterThan(5);
});

test("killed in the middle of restoring, the register is what it was before or what the backup holds", async () => {
  const filled = await filledRegister();
  filled.close();
  for (let round = 0; round < 4; round += 1) {
    const { kill } = await startProgram(
      `const open = await register.openRegister(file, { waitMilliseconds: 10000 });
       const backup = await register.makeDailyBackup(open);
       process.stdout.write("begun\\n");
       while (true) await register.restoreBackup(open, backup, {});`,
      [filled.file],
    );
    await new Promise((resolve) => setTimeout(resolve, Math.random() * 300));
    await kill();
    const again = await testRegister({ file: filled.file });
    expect(again.verify().problems).toEqual([]);
    expect(again.reads.athletes().map(({ name }) => name)).toEqual([secrets.name, secrets.otherName]);
    again.close();
  }
});
