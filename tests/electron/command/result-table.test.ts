import { expect, test } from "vitest";
import { resultTable } from "../../../electron/command/result-table.ts";
import { exampleSession, exampleTrial } from "../../core/sheet/example-session.ts";

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
