import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { ResultDocument } from "../../../core/sheet/result-document.ts";
import { type SimulatedJump, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawArmSwingJump } from "../../../core/simulate/draw-arm-swing.ts";
import { recordingText, temporaryFolder } from "../simulated-recordings.ts";
import { runInProcess } from "./run-in-process.ts";

const kind = "countermovementJumpArmSwing";
let folder: ReturnType<typeof temporaryFolder>;
let jump: SimulatedJump;

beforeAll(() => {
  folder = temporaryFolder();
  jump = simulateCountermovementJump(
    drawArmSwingJump(11, { limb: "both", plates: "two", kind: "noisy", ratesHz: [1000] }),
  );
  const text = recordingText(jump);
  const files = [{ file: "trial 1.csv", test: kind, limb: "both" }];
  folder.write({ "CMJ arm swing both.csv": text }, "named");
  folder.write({ "trial 1.csv": text }, "unnamed");
  folder.write({ "trial 1.csv": text, "session.json": JSON.stringify({ files }) }, "described");
});
afterAll(() => folder.remove());

async function trialOf(...typed: readonly string[]) {
  const { code, out } = await runInProcess("analyze", ...typed, "--format", "json");
  const { trials }: ResultDocument = JSON.parse(out);
  expect(trials).toHaveLength(1);
  return { code, trial: trials[0]! };
}

describe("counterpoise analyze of a countermovement jump with arm swing", () => {
  const ways: readonly (readonly [string, string, readonly string[]])[] = [
    ["an option", "unnamed", ["--test", kind, "--limb", "both"]],
    ["session.json", "described", []],
    ["the file's name", "named", []],
  ];

  test.each(ways)("told by %s has the weight, events and height that it really had", async (_, place, stated) => {
    const { code, trial } = await trialOf(join(folder.path, place), ...stated);
    const { truth } = jump;
    expect([code, trial.status, trial.test]).toEqual([0, "analysed", kind]);
    const value = (id: string) => trial.measures.find((each) => each.id === id && each.side === "both")!.value;
    expect(Math.abs(value("bodyWeight") / truth.bodyWeightNewtons - 1)).toBeLessThan(0.002);
    expect(Math.abs(value("jumpHeightImpulse") - truth.jumpHeightMetres)).toBeLessThan(0.01);
    expect(Math.abs(value("countermovementDepth") - truth.depthMetres)).toBeLessThan(0.01);
    const time = (name: string) => trial.events.find((each) => each.name === name && each.side === undefined)!.time;
    for (const name of ["endOfUnweighting", "lowestPosition", "takeoff", "touchdown", "landingEnd"] as const) {
      expect(Math.abs(time(name) - truth.events[name])).toBeLessThan(0.01);
    }
  });

  test("told by nothing is refused, and its trace looks like the kind without", async () => {
    const { code, trial } = await trialOf(join(folder.path, "unnamed"));
    expect([code, trial.status, trial.test]).toEqual([1, "refused", undefined]);
    expect(trial.recognised?.test).toBe("countermovementJump");
  });

  test("is named by the help among the tests", async () => {
    const { out } = await runInProcess("analyze", "--help");
    expect(out).toContain(`countermovementJump, ${kind}, squatJump`);
  });
});
