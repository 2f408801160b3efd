import { join } from "node:path";
import { expect, test } from "vitest";
import { sampleTracesFolder } from "../../../electron/program-folders.ts";
import { readFolder } from "../../../electron/read-folder.ts";
import { makeDemoRegister } from "../../../electron/register/make-demo-register.ts";
import { athleteId, temporaryFolder, testRegister } from "./register-world.ts";

test("the demo world becomes a register with its athletes, their injuries and what was entered, all simulated", async () => {
  const file = join(temporaryFolder(), "demo.sqlite");
  // Of each athlete one session; the whole world takes longer and shows no more.
  const sessions = readFolder(sampleTracesFolder()).filter(({ folder }) => /\/(1-|2-month-4)/.test(folder));
  expect(await makeDemoRegister(file, sessions)).toMatchObject({ athletes: 3, sessions: 4 });
  const register = await testRegister({ file });
  expect(register.verify().problems).toEqual([]);
  const page = register.reads.athletePage(athleteId(register, "GH-07"))!;
  expect(page.injuries.map(({ content }) => content)).toEqual([
    { side: "right", structure: "anterior cruciate ligament", date: "2026-01-17" },
  ]);
  expect(page.operations[0]?.content).toMatchObject({ graft: "hamstring", date: "2026-03-12" });
  expect(page.enteredFindings.length).toBeGreaterThan(10);
  expect(page.sessions.map(({ session }) => session.content.involved)).toEqual(["none", "right"]);
  expect(page.sessions.every(({ session }) => session.content.simulated)).toBe(true);
  expect(register.reads.athletes({ text: "tveit" })).toMatchObject([{ involved: "right", operated: "2026-03-12" }]);
});
