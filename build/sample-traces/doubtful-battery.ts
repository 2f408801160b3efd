import type { Severity } from "../../core/ground/finding.ts";
import type { FindingCode } from "../../core/ground/finding-codes.ts";
import { recordActs } from "../../core/simulate/act.ts";
import { countermovementAct } from "../../core/simulate/countermovement-act.ts";
import type { SimulatedRecording } from "../../core/simulate/countermovement-jump.ts";
import { simulateCountermovementJump } from "../../core/simulate/countermovement-jump.ts";
import { simulateDropJump } from "../../core/simulate/drop-jump.ts";
import { simulateDropLanding } from "../../core/simulate/drop-landing.ts";
import type { DropJumpOptions } from "../../core/simulate/drop-options.ts";
import type { JumpOptions } from "../../core/simulate/options.ts";
import { addSpikes } from "../../core/simulate/recording-faults.ts";
import { simulateHops } from "../../core/simulate/repeated-hops.ts";
import { simulateSquatJump } from "../../core/simulate/squat-jump.ts";
import { standAct } from "../../core/simulate/standing-acts.ts";
import type { DoubtfulFile } from "./doubtful.ts";
import { commaDialect, writeDelimited } from "./write-delimited.ts";

const massKg = 70;
const common = {
  rateHz: 1000,
  massKg,
  limb: "both",
  plates: "two",
  swayMetres: 0.0006,
  plateNoiseNewtons: 1.2,
  quietSecondsAfter: 2.5,
} as const;
const jump: Omit<JumpOptions, "seed"> = { ...common, jumpHeightMetres: 0.27, quietSecondsBefore: 2.1 };
const drop: Omit<DropJumpOptions, "seed"> = {
  ...common,
  emptySecondsBefore: 0.8,
  boxHeightMetres: 0.3,
  dropHeightEffectiveMetres: 0.27,
  jumpHeightMetres: 0.22,
  contactSeconds: 0.23,
  leadingLeg: "left",
};

/** Files of the other tests, and faults of measuring, that are each refused or warned for exactly one code. */
export function makeDoubtfulBattery(): readonly DoubtfulFile[] {
  const file = (
    name: string,
    code: FindingCode,
    severity: Severity,
    shows: string,
    recording: SimulatedRecording,
    said: DoubtfulFile["said"] = { test: "countermovementJump", limb: "both" },
  ): DoubtfulFile => ({
    file: name,
    code,
    severity,
    shows,
    said,
    text: writeDelimited(recording, commaDialect),
  });
  const dropped = { test: "dropJump", limb: "both", dropHeightMetres: 0.3, leadingLeg: "left" } as const;
  return [
    file(
      "spikes.csv",
      "spikes",
      "warning",
      "three single samples of the left plate are wrong by 350 N, one in standing, one in the push, one after landing",
      addSpikes(simulateCountermovementJump({ ...jump, seed: 4100 }), 0, [
        { at: 1.1, newtons: 350 },
        { at: 2.62, newtons: -350 },
        { at: 5.6, newtons: 350 },
      ]),
    ),
    file(
      "bounce-after-landing.csv",
      "bounce-after-landing",
      "note",
      "after the landing the athlete leaves the plate once more, for 0.14 s",
      recordActs({ ...common, seed: 4104 }, 0.5, [
        standAct(2.1),
        countermovementAct({ massKg, limb: "both", jumpHeightMetres: 0.27, bounceFlightSeconds: 0.14 }),
        standAct(2.5),
      ]),
    ),
    file(
      "leg-swing.csv",
      "leg-swing",
      "warning",
      "a single-leg jump in which the free leg swings before the push: force dips, rises and dips again",
      simulateCountermovementJump({
        ...jump,
        seed: 4106,
        limb: "left",
        jumpHeightMetres: 0.14,
        timeToTakeoffSeconds: 0.9,
        legSwing: { metres: 0.02, seconds: 0.4, middleSeconds: -0.2 },
      }),
      { test: "countermovementJump", limb: "left" },
    ),
    file(
      "dip-in-squat-jump.csv",
      "dip-in-squat-jump",
      "warning",
      "before the rise from the hold the force dips by 12 % of the weight",
      simulateSquatJump({
        ...common,
        seed: 4108,
        jumpHeightMetres: 0.24,
        dip: { weightFraction: 0.12, seconds: 0.3 },
      }),
      { test: "squatJump", limb: "both" },
    ),
    file(
      "slow-contact.csv",
      "slow-contact",
      "note",
      "a drop jump whose contact lasts 0.32 s",
      simulateDropJump({ ...drop, seed: 4110, contactSeconds: 0.32 }),
      dropped,
    ),
    file(
      "drop-height-off.csv",
      "drop-height-off",
      "warning",
      "the athlete lowers the body from the box: it falls 0.19 m of 0.30 m",
      simulateDropJump({ ...drop, seed: 4112, dropHeightEffectiveMetres: 0.19 }),
      dropped,
    ),
    file(
      "leading-leg-missing.csv",
      "leading-leg-missing",
      "warning",
      "nobody wrote down which leg stepped off the box",
      simulateDropJump({ ...drop, seed: 4114 }),
      { test: "dropJump", limb: "both", dropHeightMetres: 0.3 },
    ),
    file(
      "drop-height-not-stated.csv",
      "drop-height-not-stated",
      "note",
      "nobody wrote down how high the box was",
      simulateDropJump({ ...drop, seed: 4116 }),
      { test: "dropJump", limb: "both", leadingLeg: "left" },
    ),
    file(
      "step-down-without-jump.csv",
      "test-contradicts",
      "refusal",
      "labelled drop jump: the athlete steps down, lands and stands",
      simulateDropLanding({ ...common, seed: 4118, emptySecondsBefore: 0.8, boxHeightMetres: 0.3, leadingLeg: "left" }),
      dropped,
    ),
    file(
      "hops-few.csv",
      "hops-few",
      "warning",
      "three hops instead of at least five",
      simulateHops({
        ...common,
        seed: 4120,
        entryHeightMetres: 0.18,
        hops: [
          { contactSeconds: 0.21, jumpHeightMetres: 0.19 },
          { contactSeconds: 0.2, jumpHeightMetres: 0.2 },
          { contactSeconds: 0.205, jumpHeightMetres: 0.2 },
        ],
      }),
      { test: "repeatedHops", limb: "both" },
    ),
    file(
      "plate-drift.csv",
      "plate-drift",
      "warning",
      "the zero of the left plate creeps by 1.5 N a second; empty plates before stepping on and after stepping off show it",
      simulateCountermovementJump({
        ...jump,
        seed: 4122,
        emptySecondsBefore: 1.2,
        emptySecondsAfter: 1.2,
        plateDriftsNewtonsPerSecond: [1.5, 0],
      }),
    ),
  ];
}
