import type { CriterionResult } from "../../core/criteria/criterion.ts";
import { returnToPivotingSport } from "../../core/criteria/return-to-pivoting-sport.ts";
import type { TrialEvent } from "../../core/events/event.ts";
import { proseFinding } from "../../core/ground/finding.ts";
import type { Limb } from "../../core/ground/limb.ts";
import { measureCatalogue } from "../../core/ground/measures/catalogue.ts";
import type { Measure } from "../../core/measures/measure.ts";
import type { SessionResult } from "../../core/result/session-result.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { Comparison } from "../../core/sides/comparison.ts";
import { openGate } from "../core/gate/gates.ts";

/** Invented results for the screens' tests. No value is computed: each is only there to be shown. */

const event = (name: TrialEvent["name"], time: number): TrialEvent => ({
  name,
  sample: time * 1000,
  time,
  from: "detected",
});

export const exampleEvents: readonly TrialEvent[] = [
  event("onset", 1.03),
  event("endOfUnweighting", 1.34),
  event("lowestPosition", 1.511),
  event("takeoff", 1.76),
  event("touchdown", 2.226),
  event("landingEnd", 2.5),
  { ...event("takeoff", 1.758), side: "left" },
  { ...event("takeoff", 1.76), side: "right" },
];

/** Every measure of the catalogue, for both limbs together and, where it is reported per limb, for each. */
export function everyMeasure(limb: Limb): readonly Measure[] {
  return measureCatalogue.flatMap((entry) => {
    const sides: readonly Limb[] = entry.perLimb && limb === "both" ? ["both", "left", "right"] : [limb];
    return sides.map((side) => ({ id: entry.id, side, value: 1.5, unit: entry.unit, uncertainty: 0.02 }));
  });
}

export function exampleTrial(parts: Partial<TrialResult> = {}): TrialResult {
  return {
    file: "jump-1.csv",
    sha256: "0".repeat(64),
    trial: 1,
    status: "analysed",
    test: "countermovementJump",
    limb: "both",
    rate: 1000,
    plates: [
      { name: "left", limb: "left", proof: "single-leg-trial" },
      { name: "right", limb: "right", proof: "single-leg-trial" },
    ],
    weight: { newtons: 672.7, uncertainty: 0.3, from: "quiet standing before the jump" },
    events: exampleEvents,
    measures: everyMeasure(parts.limb ?? "both"),
    findings: [],
    seen: false,
    edits: [],
    ...parts,
  };
}

export const exampleComparison: Comparison = {
  test: "countermovementJump",
  legs: "single",
  measure: "jumpHeightImpulse",
  unit: "m",
  basis: "involved-uninvolved",
  first: { side: "right", values: [0.115, 0.119, 0.117], mean: 0.117 },
  second: { side: "left", values: [0.139, 0.141, 0.14], mean: 0.14 },
  index: 83.6,
  intervals: [
    { confidence: 0.8, low: 81.2, high: 86.4 },
    { confidence: 0.95, low: 79, high: 89 },
  ],
  intervalNote: "Interval of the example.",
  role: "criterion",
  weaker: "",
};

function criterionResults(status: CriterionResult["status"]): readonly CriterionResult[] {
  return returnToPivotingSport.criteria.map((criterion) => ({
    criterion,
    status,
    reason: `Reason of ${criterion.id}.`,
    moreTrials: "",
    caution: "",
  }));
}

export function exampleSession(parts: Partial<SessionResult> = {}): SessionResult {
  return {
    folder: "example",
    description: { athlete: { code: "X-1" }, involved: "right", date: "2026-10-14", simulated: true },
    trials: [exampleTrial()],
    comparisons: [exampleComparison],
    criteriaSet: returnToPivotingSport,
    criteria: criterionResults("not-met"),
    gate: openGate,
    knee: [],
    findings: [],
    ...parts,
  };
}

export const shortWeighing = proseFinding(
  "weighing-short",
  "warning",
  "Quiet standing lasts 0.3 s.",
  "Stand still for two seconds.",
  { removes: ["timeToStabilisation"] },
);
