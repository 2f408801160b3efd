import { beforeAll, describe, expect, test } from "vitest";
import { analyzeSession } from "../../core/analyze.ts";
import { assignmentOffers } from "../../core/assignment/assignment-offers.ts";
import { assignmentRows } from "../../core/assignment/assignment-rows.ts";
import type { Limb } from "../../core/ground/limb.ts";
import { overlaySession } from "../../core/session/overlay-session.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import { defaultSettings } from "../../core/settings/settings.ts";
import { groupName, trialGroups } from "../../core/sheet/sheet-trials.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { drawArmSwingJump } from "../../core/simulate/draw-arm-swing.ts";
import { drawJump } from "../../core/simulate/draw-jump.ts";
import { recordingFile } from "../../electron/files/stored-session.ts";
import { bytesOf, recordingText } from "../electron/simulated-recordings.ts";
import { notKnown } from "./gate/gates.ts";

const armSwing = "countermovementJumpArmSwing";
const handsOnHips = "countermovementJump";

function textOf(limb: Limb, seed: number, draw: typeof drawJump): Uint8Array {
  const bounds = { limb, plates: "two", kind: "noisy", massKg: [70, 70], ratesHz: [1000] } as const;
  return bytesOf(recordingText(simulateCountermovementJump(draw(seed, bounds))));
}

describe("a session with jumps of both kinds", () => {
  let analysis: SessionAnalysis;
  beforeAll(() => {
    const files = (["both", "left", "right"] as const).flatMap((limb, at) =>
      [1, 2, 3].flatMap((number) => [
        recordingFile(`CMJ arm swing ${limb} ${number}.csv`, textOf(limb, 40 * at + 2 * number + 1, drawArmSwingJump)),
        recordingFile(`CMJ ${limb} ${number}.csv`, textOf(limb, 40 * at + 2 * number + 21, drawJump)),
      ]),
    );
    const nothing = { folder: "day", unreadable: [], descriptionFindings: [], stated: {} };
    analysis = analyzeSession({ ...nothing, files, description: { involved: "right" } }, defaultSettings);
  });

  test("takes each from its name, and says so", () => {
    for (const { file, test: kind, findings, status } of analysis.result.trials) {
      expect(status).not.toBe("refused");
      expect(kind).toBe(file.includes("arm swing") ? armSwing : handsOnHips);
      expect(findings.map(({ code }) => code)).toContain("test-from-name");
    }
  });

  test("compares either kind with itself alone, by the same measures", () => {
    const { comparisons } = analysis.result;
    const measures = (kind: string) =>
      comparisons.filter((each) => each.test === kind).map(({ legs, measure }) => `${legs} ${measure}`);
    expect(measures(armSwing)).toEqual(measures(handsOnHips));
    expect(measures(armSwing)).toContain("single jumpHeightImpulse");
    expect(comparisons).toHaveLength(2 * measures(armSwing).length);
    const { trials } = analysis.result;
    for (const { test: kind, legs, measure, first, second } of comparisons) {
      for (const side of [first, second]) {
        const own = trials.filter(
          (trial) => trial.test === kind && (legs === "both" ? trial.limb === "both" : trial.limb === side.side),
        );
        const values = own.flatMap((trial) =>
          trial.measures.flatMap((each) => (each.id === measure && each.side === side.side ? [each.value] : [])),
        );
        expect(values.length).toBe(3);
        expect(side.mean).toBeCloseTo(values.reduce((sum, each) => sum + each, 0) / 3, 9);
      }
    }
  });

  test("lays curves over each other, and groups attempts, by kind", () => {
    for (const kind of [armSwing, handsOnHips] as const) {
      const overlay = overlaySession(analysis, { test: kind, legs: "single", alignedAt: "takeoff" });
      const files = [overlay!.first, overlay!.second].flatMap(({ curves }) => curves.map(({ file }) => file));
      expect(files).toHaveLength(6);
      expect(files.every((file) => file.includes("arm swing") === (kind === armSwing))).toBe(true);
    }
    expect(trialGroups(analysis.result.trials).map((group) => [groupName(group), group.trials.length])).toEqual([
      ["countermovement jump, two legs", 3],
      ["countermovement jump, single-leg", 6],
      ["countermovement jump with arm swing, two legs", 3],
      ["countermovement jump with arm swing, single-leg", 6],
    ]);
  });

  test("offers nothing against a name that says the arms swing, which the trace cannot know", () => {
    const rows = assignmentRows(
      analysis.result,
      analysis.result.trials.map(({ file }) => ({ file })),
    );
    for (const row of rows) expect([row.file, row.test.offers]).toEqual([row.file, []]);
  });
});

test("a trace is no second opinion where a header or a folder says that the arms swing", () => {
  const recognised = { test: handsOnHips, trace: { seen: "impact", before: "empty plate" } } as const;
  expect(assignmentOffers({ file: "trial 3.csv", folder: "CMJ arm swing", recognised }).test).toEqual([
    { value: armSwing, from: "folder name" },
  ]);
  expect(assignmentOffers({ file: "trial 3.csv", folder: "", recognised }).test).toEqual([
    { value: handsOnHips, from: "trace" },
  ]);
});

test("Jumps with arm swing alone answer no criterion that was set for hands on hips", () => {
  const files = (["left", "right"] as const).flatMap((limb, at) =>
    [1, 2, 3].map((number) =>
      recordingFile(`CMJ arm swing ${limb} ${number}.csv`, textOf(limb, 40 * at + 2 * number + 1, drawArmSwingJump)),
    ),
  );
  const nothing = { folder: "day", unreadable: [], descriptionFindings: [], stated: {} };
  const { result } = analyzeSession(
    { ...nothing, files, description: { involved: "right", ...notKnown } },
    defaultSettings,
  );
  const height = result.criteria.find(
    (each) => each.criterion.id === "single-leg-countermovement-jump-height-symmetry",
  );
  expect(height?.status).toBe("not-measured");
  expect(height?.estimate).toBeUndefined();
});
