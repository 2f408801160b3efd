import { expect, test } from "vitest";
import { resultTable } from "../../../electron/command/result-table.ts";
import { exampleComparison, exampleSession, exampleTrial, stoppedSession } from "../../core/sheet/example-session.ts";

test("hops are counted in whole numbers", () => {
  const measures = [
    { id: "hopsFound", side: "both", value: 9, unit: "{count}" },
    { id: "hopsUsed", side: "both", value: 5, unit: "{count}" },
  ] as const;
  const trial = exampleTrial("hops.csv", "both", 0.2, { test: "repeatedHops", measures });
  const lines = resultTable([exampleSession({ trials: [trial] })]).split("\n");
  expect(lines.find((line) => line.includes("Hops found"))).toMatch(/Hops found +9$/);
  expect(lines.find((line) => line.includes("Hops used"))).toMatch(/Hops used +5$/);
});

test("the same measure of two tests stands under the name of each", () => {
  const drop = { test: "dropJump", dropHeightMetres: 0.2 } as const;
  const comparisons = [
    exampleComparison("jumpHeightFlightTime", "single", [0.12, 0.13], [0.14, 0.15]),
    exampleComparison("jumpHeightFlightTime", "single", [0.1, 0.11], [0.13, 0.14], drop),
  ];
  const lines = resultTable([exampleSession({ comparisons })]).split("\n");
  const at = lines.findIndex((line) => line.startsWith("  Sides"));
  expect(lines.slice(at + 1, at + 5).map((line) => line.trim().slice(0, 26))).toEqual([
    "Countermovement jump, sing",
    "Jump height, by flight tim",
    "Drop jump, single-leg, fro",
    "Jump height, by flight tim",
  ]);
});

test("the reason of a closed gate is said once, above the criteria it withholds", () => {
  const text = resultTable([stoppedSession()]);
  expect(text).toContain("withheld today");
  expect(text.split(stoppedSession().gate.reason)).toHaveLength(2);
});
