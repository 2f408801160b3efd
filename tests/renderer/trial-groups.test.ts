import { describe, expect, it } from "vitest";
import { groupTrials } from "../../renderer/traces/trial-groups.ts";
import { trialTitle } from "../../renderer/traces/trial-heading.tsx";
import { exampleTrial } from "./example-session.ts";

describe("the session's list of trials", () => {
  const { test: _test, limb: _limb, ...unknown } = exampleTrial({ file: "notes.txt", status: "refused" });
  const groups = groupTrials([
    exampleTrial({ file: "a.csv" }),
    exampleTrial({ file: "b.csv", limb: "left" }),
    exampleTrial({ file: "c.csv", limb: "right" }),
    unknown,
    exampleTrial({ file: "d.csv", limb: "left" }),
    exampleTrial({ file: "e.csv" }),
  ]);

  it("groups by test and legs, and keeps what is no trial for the end", () => {
    expect(groups.map((group) => group.title)).toEqual([
      "Countermovement jump, two legs",
      "Countermovement jump, single-leg",
      "Not analysed",
    ]);
  });

  it("keeps boxes apart, and names a box that nobody stated", () => {
    const drop = exampleTrial({ test: "dropJump", limb: "left" });
    const titles = groupTrials([
      { ...drop, file: "a.csv", dropHeightMetres: 0.3 },
      { ...drop, file: "b.csv", dropHeightMetres: 0.2 },
      { ...drop, file: "c.csv" },
    ]).map((group) => group.title);
    expect(titles).toEqual([
      "Drop jump, single-leg, from 0.20\u00a0m",
      "Drop jump, single-leg, from 0.30\u00a0m",
      "Drop jump, single-leg, box height not stated",
    ]);
  });

  it("counts attempts for each limb on its own", () => {
    const single = groups[1]!.trials.map(({ trial, attempt }) => `${trial.file} ${attempt} ${trial.limb}`);
    expect(single).toEqual(["b.csv 1 left", "c.csv 1 right", "d.csv 2 left"]);
  });

  it("names a trial by its test, and a file that is no trial by its own name", () => {
    expect(trialTitle(groups[1]!.trials[2]!)).toBe("Countermovement jump, single-leg, 2 left");
    expect(trialTitle(groups[2]!.trials[0]!)).toBe("notes.txt");
  });
});
