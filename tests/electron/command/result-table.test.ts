import { expect, test } from "vitest";
import { kneeRows } from "../../../core/criteria/knee-rows.ts";
import { gateOf } from "../../../core/gate/gate.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { resultTable } from "../../../electron/command/result-table.ts";
import { notKnown, readingOf } from "../../core/gate/gates.ts";
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

test("what closes tests is said once, with what it closes, above the criteria it withholds", () => {
  const session = stoppedSession();
  const text = resultTable([session]);
  expect(text).toContain("withheld today");
  expect(session.gate.closures.length).toBeGreaterThan(0);
  for (const { reason } of session.gate.closures) expect(text.split(reason)).toHaveLength(2);
  expect(text).toContain(`  Closed (every jump): ${session.gate.closures[0]?.reason}`);
});

test("tests that are closed singly are named, and the knee's own rows stand below the criteria", () => {
  const gate = gateOf(
    { date: "2026-10-14", ...notKnown, readings: [readingOf("2026-10-14", "during", 3, "none")], involved: "right" },
    defaultSettings,
  );
  const text = resultTable([exampleSession({ gate, knee: kneeRows(gate, "right") })]);
  expect(text).toContain(
    "  Closed (two-leg drop tests and hops, single-leg jumps and hops and single-leg drop tests): Pain 3 of 10",
  );
  expect(text).toMatch(/Pain of the knee, worst read on the day, at most 2 of 10: not met\n/);
});
