import { describe, expect, test } from "vitest";
import { gateOf } from "../../../core/gate/gate.ts";
import { proseFinding } from "../../../core/ground/finding.ts";
import type { Side } from "../../../core/ground/limb.ts";
import { afterTrial } from "../../../core/protocol/after-trial.ts";
import { missingLines, progressLine, tooEarlyLines } from "../../../core/protocol/progress-words.ts";
import { type ProgressSession, protocolProgress } from "../../../core/protocol/protocol-progress.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import { trialVerdict } from "../../../core/protocol/trial-verdict.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { legsInOrder } from "../../../core/stated/protocol.ts";
import type { Protocol } from "../../../core/stated/protocol-schema.ts";
import { openGate, stoppedGate } from "../gate/gates.ts";
import { makeSession, makeTrial, type TrialChanges } from "./make-session.ts";

/** A single-leg drop jump from the protocol's box, with the changes. */
const trial = (changes: TrialChanges): TrialResult => makeTrial({ dropHeightMetres: 0.2, ...changes });

const several = (count: number, changes: TrialChanges): readonly TrialResult[] =>
  Array.from({ length: count }, () => trial(changes));

/** Trials without comparisons: how far a session has come. */
const sessionOf = (trials: readonly TrialResult[], involved: Side): ProgressSession => ({
  trials,
  comparisons: [],
  description: { involved },
});

const protocolOf = (changes: Partial<Protocol>): Protocol => ({
  id: "own",
  name: "Own",
  version: 1,
  stage: "Own",
  tests: [{ test: "dropJump", legs: "single", trials: 4, mostAttempts: 6, dropHeightMetres: 0.2 }],
  notYet: [],
  stopRules: [],
  ...changes,
});

const refusal = proseFinding("no-takeoff", "refusal", "Nobody left the plate.", "Repeat the jump.");

describe("progress through a protocol", () => {
  test("counts valid trials of each leg, the uninvolved leg first, and says what is missing", () => {
    const trials = [...several(2, { limb: "right" }), ...several(3, { limb: "left" })];
    const progress = protocolProgress(protocolOf({}), sessionOf(trials, "left"));
    expect(progress.tests.map(progressLine)).toEqual([
      "Single-leg drop jump from 0.20\u00a0m: right 2 of 4, left 3 of 4.",
    ]);
    expect(missingLines(progress, openGate)).toEqual([
      "Two more valid single-leg drop jumps from 0.20\u00a0m on the right.",
      "One more valid single-leg drop jump from 0.20\u00a0m on the left.",
    ]);
    expect(progress.finished).toBe(false);
  });

  test("counts refused and excluded trials as attempts, and never asks beyond the most attempts", () => {
    const trials = [
      ...several(2, { limb: "right" }),
      ...several(2, { limb: "right", status: "refused", findings: [refusal] }),
      trial({ limb: "right", excluded: { reason: "stumbled" } }),
    ];
    const [single] = protocolProgress(protocolOf({}), sessionOf(trials, "left")).tests;
    expect(single?.limbs[0]).toEqual({
      limb: "right",
      valid: 2,
      waiting: 0,
      wanted: 4,
      attempts: 5,
      mostAttempts: 6,
      practice: 0,
      state: "repeat",
      more: 1,
    });
    const all = protocolProgress(
      protocolOf({}),
      sessionOf([...trials, ...several(1, { limb: "right", status: "refused" })], "left"),
    );
    expect(missingLines(all, openGate)[0]).toBe(
      "Single-leg drop jump from 0.20\u00a0m on the right: 2 of 4, and all 6 attempts are made. No more today.",
    );
  });

  test("is finished when every test is complete or has used its attempts", () => {
    const trials = [...several(4, { limb: "left" }), ...several(6, { limb: "right", status: "refused" })];
    expect(protocolProgress(protocolOf({}), sessionOf(trials, "right")).finished).toBe(true);
  });

  test("asks for nothing while the gate is closed", () => {
    const closed = stoppedGate("pain 5 of 10");
    expect(missingLines(protocolProgress(protocolOf({}), sessionOf([], "left")), closed)).toEqual([
      "No more jumps today. The session was stopped: pain 5 of 10.",
    ]);
  });

  test("keeps boxes apart, and gives a trial without a stated box to the only test it can belong to", () => {
    const other = trial({ dropHeightMetres: 0.3 });
    const { dropHeightMetres: _box, ...unstated } = trial({});
    expect(protocolProgress(protocolOf({}), sessionOf([other, unstated], "left"))).toMatchObject({
      others: 1,
      tests: [
        {
          limbs: [
            { limb: "right", valid: 0, waiting: 0 },
            { limb: "left", valid: 0, waiting: 1, attempts: 1 },
          ],
        },
      ],
    });
    const twoBoxes = protocolOf({
      tests: [0.2, 0.3].map((dropHeightMetres) => ({
        test: "dropJump",
        legs: "single",
        trials: 4,
        mostAttempts: 6,
        dropHeightMetres,
      })),
    });
    expect(protocolProgress(twoBoxes, sessionOf([unstated], "left")).others).toBe(1);
  });

  test("says when a test was recorded that the stage leaves out", () => {
    const running = shippedProtocol("return-to-running");
    if (running === undefined) throw new Error("the protocol ships");
    const progress = protocolProgress(running, sessionOf(several(2, { limb: "right", test: "dropJump" }), "right"));
    expect(tooEarlyLines(progress)).toEqual([
      "Single-leg drop jump is not done at this stage (landing on one leg from a box comes last), and 2 were recorded.",
    ]);
    expect(progress.others).toBe(0);
    expect(missingLines(progress, openGate)).toEqual(["Four valid countermovement jumps."]);
  });

  test("names the uninvolved leg first, and the right leg where nobody or both are injured", () => {
    expect(legsInOrder("right")).toEqual(["left", "right"]);
    expect(legsInOrder("left")).toEqual(["right", "left"]);
    expect(legsInOrder("none")).toEqual(["right", "left"]);
    expect(legsInOrder("both")).toEqual(["right", "left"]);
  });
});

describe("after a trial", () => {
  const saidAfter = (trials: readonly TrialResult[], gate = openGate) => {
    const last = trials.at(-1);
    if (last === undefined) throw new Error("a trial is needed");
    return afterTrial(protocolOf({}), last, { ...makeSession(trials), gate });
  };
  const made = (valid: number, refused: number) => [
    ...several(valid, { limb: "right" }),
    ...several(refused, { limb: "right", status: "refused", findings: [refusal] }),
  ];

  test("asks for a repeat of what does not count, and for more of what does, within the attempts", () => {
    expect(saidAfter(made(2, 1))).toBe("Repeat it: 2 of 4, 3 attempts left.");
    expect(saidAfter(made(2, 0))).toBe("2 more of the same: 2 of 4, 4 attempts left.");
    expect(saidAfter(made(4, 0))).toBe("Single-leg drop jump from 0.20\u00a0m on the right is complete: 4 of 4.");
    expect(saidAfter(made(2, 4))).toBe("Do not repeat it: 2 of 4, and all 6 attempts are made.");
  });

  test("asks for nothing with the gate closed, outside the protocol, or before test and limb are known", () => {
    expect(saidAfter(made(2, 1), stoppedGate("effusion 1+"))).toBe(
      "No more of these jumps today. The session's cautions say why.",
    );
    expect(saidAfter(made(2, 1), gateOf({}, defaultSettings))).toBe(
      "The cautions are to be asked before the next jump. This one is kept.",
    );
    expect(saidAfter(several(1, { test: "squatJump" }))).toBe("This test is not in the protocol.");
    const { test: _test, ...unknown } = trial({});
    expect(saidAfter([unknown])).toBe("");
  });
});

describe("the verdict on a trial", () => {
  test("counts unless it was refused or excluded, and gives the reason", () => {
    const warning = proseFinding("weighing-short", "warning", "Standing was short.", "Stand longer.");
    expect(trialVerdict(trial({}))).toEqual({ counts: true, reason: "" });
    expect(trialVerdict(trial({ findings: [warning] }))).toEqual({ counts: true, reason: "Standing was short." });
    expect(trialVerdict(trial({ status: "refused", findings: [warning, refusal] }))).toEqual({
      counts: false,
      reason: "Nobody left the plate.",
    });
    expect(trialVerdict(trial({ excluded: { reason: "stumbled" } }))).toEqual({
      counts: false,
      reason: "Excluded: stumbled",
    });
  });
});
