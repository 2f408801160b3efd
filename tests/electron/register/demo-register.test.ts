import { join } from "node:path";
import { expect, test } from "vitest";
import { readFolder } from "../../../electron/files/read-folder.ts";
import { sampleTracesFolder } from "../../../electron/program/program-folders.ts";
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
  expect(page.injuries.map(({ content }) => content)).toMatchObject([
    { side: "right", structure: "anterior cruciate ligament", date: "2026-01-17", bodyPart: "knee", involved: true },
    { side: "left", date: "2026-11-16", bodyPart: "ankle", involved: false },
  ]);
  expect(page.operations[0]?.content).toMatchObject({ graft: "hamstring", date: "2026-03-12" });
  expect(page.enteredFindings.length).toBeGreaterThan(10);
  expect(page.sessions.map(({ session }) => session.content.involved)).toEqual(["none", "right"]);
  expect(page.sessions.every(({ session }) => session.content.simulated)).toBe(true);
  // Neither an ankle of the other leg nor a meniscus of years ago makes a second involved side; one was never injured.
  expect(register.reads.athletes().map(({ code, involved }) => [code, involved])).toEqual([
    ["GH-07", "right"],
    ["GH-14", "left"],
    ["GH-21", "none"],
  ]);
  expect(register.reads.athletes({ text: "tveit" })).toMatchObject([{ operated: "2026-03-12" }]);
});
