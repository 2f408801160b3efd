import type { CriteriaSet, Criterion, CriterionResult } from "../../../core/criteria/criterion.ts";
import { kneeRows } from "../../../core/criteria/knee-rows.ts";
import type { TrialEvent } from "../../../core/events/event.ts";
import { gateOf } from "../../../core/gate/gate.ts";
import { proseFinding } from "../../../core/ground/finding.ts";
import type { Limb, Side } from "../../../core/ground/limb.ts";
import type { MeasureId } from "../../../core/ground/measures/catalogue.ts";
import type { Measure } from "../../../core/measures/measure.ts";
import type { SessionResult } from "../../../core/result/session-result.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { Comparison } from "../../../core/sides/comparison.ts";
import type { ReferenceValue } from "../../../core/stated/reference-value.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { answersOf, changeAnswersOf, notKnown, readingOf } from "../gate/gates.ts";

/**
 * Results of an invented session for the tests of the sheet, built by hand: the shapes are those of an analysis, the
 * numbers are near those of the demo world's month 7 and mean nothing else.
 */

const exampleCriteria: readonly Criterion[] = [
  {
    id: "heightSymmetrySingleLeg",
    label: "Jump height symmetry, single-leg countermovement jump",
    source: "common practice",
    test: "countermovementJump",
    kind: "symmetry",
    legs: "single",
    measure: "jumpHeightImpulse",
    atLeastPercent: 90,
  },
  {
    id: "brakingImpulseSymmetry",
    label: "Braking impulse symmetry, two-leg countermovement jump",
    source: "common practice",
    test: "countermovementJump",
    kind: "symmetry",
    legs: "both",
    measure: "brakingImpulse",
    atLeastPercent: 90,
  },
  {
    id: "propulsionImpulseSymmetry",
    label: "Propulsion impulse symmetry, two-leg countermovement jump",
    source: "common practice",
    test: "countermovementJump",
    kind: "symmetry",
    legs: "both",
    measure: "propulsionImpulse",
    atLeastPercent: 90,
  },
  {
    id: "heightAgainstReference",
    label: "Jump height, single-leg, against the uninvolved leg before the injury",
    source: "Wellsandt et al. 2017",
    test: "countermovementJump",
    kind: "against-reference",
    legs: "single",
    measure: "jumpHeightImpulse",
    atLeastPercent: 90,
  },
];

const exampleSet: CriteriaSet = {
  id: "return-to-pivoting-sport",
  name: "Return to pivoting sport",
  version: 3,
  author: "Counterpoise contributors",
  stage: "return to pivoting sport",
  population: "Adults after anterior cruciate ligament reconstruction",
  criteria: exampleCriteria,
};

const sha256OfNothing = "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855";

function exampleEvents(): readonly TrialEvent[] {
  const times = { onset: 1.0302, endOfUnweighting: 1.3401, lowestPosition: 1.5114, takeoff: 1.7603, touchdown: 2.2261 };
  return Object.entries(times).map(([name, time]) => ({
    name: name as TrialEvent["name"],
    sample: time * 1000,
    time,
    from: "detected",
    uncertainty: 0.0004,
  }));
}

/** Measures of one trial: a height in metres, a time to take-off in seconds, a few around them. */
function exampleMeasures(limb: Limb, heightMetres: number): readonly Measure[] {
  const whole: readonly Measure[] = [
    { id: "jumpHeightImpulse", side: limb, value: heightMetres, unit: "m", uncertainty: 0.0021 },
    { id: "jumpHeightFlightTime", side: limb, value: heightMetres + 0.003, unit: "m", uncertainty: 0.0013 },
    { id: "timeToTakeoff", side: limb, value: 0.7301, unit: "s", uncertainty: 0.031 },
    { id: "bodyWeight", side: limb, value: 672.7, unit: "N", uncertainty: 0.3 },
    { id: "bodyMass", side: limb, value: 68.6, unit: "kg", uncertainty: 0.03 },
    { id: "unweightingNetImpulse", side: limb, value: -84.2, unit: "N.s", uncertainty: 0.4 },
  ];
  if (limb !== "both") return whole;
  return [
    ...whole,
    { id: "brakingImpulse", side: "both", value: 202.1, unit: "N.s", uncertainty: 0.4 },
    { id: "brakingImpulse", side: "left", value: 108.9, unit: "N.s", uncertainty: 0.3 },
    { id: "brakingImpulse", side: "right", value: 93.2, unit: "N.s", uncertainty: 0.3 },
  ];
}

export function exampleTrial(
  file: string,
  limb: Limb,
  heightMetres: number,
  changes: Partial<TrialResult> = {},
): TrialResult {
  return {
    file,
    sha256: sha256OfNothing,
    trial: 1,
    status: "analysed",
    test: "countermovementJump",
    limb,
    rate: 1000,
    timeOrigin: 0,
    span: { start: 0, end: 4000 },
    plates: [
      { name: "plate 1", limb: "left", proof: "single-leg-trial" },
      { name: "plate 2", limb: "right", proof: "single-leg-trial" },
    ],
    weight:
      limb === "both"
        ? {
            newtons: 672.7,
            uncertainty: 0.3,
            from: "quiet standing before the jump",
            window: { start: 0, end: 1000 },
            other: { newtons: 672.9, uncertainty: 0.4, from: "quiet standing before and after the jump" },
          }
        : { newtons: 672.7, uncertainty: 0.3, from: "other trials on the same plates", trials: 3 },
    events: exampleEvents(),
    measures: exampleMeasures(limb, heightMetres),
    findings: [],
    seen: true,
    edits: [],
    ...changes,
  };
}

export const refusedTrial: TrialResult = {
  file: "two-leg-5.csv",
  sha256: sha256OfNothing,
  trial: 1,
  status: "refused",
  plates: [],
  events: [],
  measures: [],
  findings: [
    proseFinding(
      "no-takeoff",
      "refusal",
      "The force never leaves the plate, so there is no jump to measure.",
      "Check that the right recording was exported.",
    ),
  ],
  seen: false,
  edits: [],
};

export const exampleTrials: readonly TrialResult[] = [
  exampleTrial("two-leg-1.csv", "both", 0.261),
  exampleTrial("two-leg-2.csv", "both", 0.266, {
    edits: [{ name: "takeoff", time: 1.7603 }],
    events: exampleEvents().map((event) => (event.name === "takeoff" ? { ...event, from: "edited" as const } : event)),
    findings: [
      proseFinding(
        "event-moved",
        "note",
        "Take-off was moved by hand from 1.756 s to 1.760 s.",
        "Reset it to detected in Traces.",
      ),
    ],
  }),
  exampleTrial("two-leg-3.csv", "both", 0.252, { excluded: { reason: "step before the dip" } }),
  exampleTrial("two-leg-4.csv", "both", 0.269, {
    status: "partial",
    findings: [
      proseFinding(
        "landing-short",
        "warning",
        "Quiet standing after landing lasts 0.3 s, so landing measures are missing.",
        "Record two seconds of standing still after landing.",
        { where: "3.7 s to 4.0 s", removes: ["landingImpulse", "timeToStabilisation"] },
      ),
    ],
  }),
  refusedTrial,
  exampleTrial("single-left-1.csv", "left", 0.142),
  exampleTrial("single-left-2.csv", "left", 0.137),
  exampleTrial("single-left-3.csv", "left", 0.141),
  exampleTrial("single-right-1.csv", "right", 0.115),
  exampleTrial("single-right-2.csv", "right", 0.119, {
    seen: false,
    findings: [
      proseFinding(
        "other-foot-touching",
        "warning",
        "The other foot carried 34 N for 0.1 s during the push.",
        "Look at the trace and exclude the trial if the foot helped.",
        { where: "1.4 s to 1.5 s" },
      ),
    ],
  }),
  exampleTrial("single-right-3.csv", "right", 0.117),
];

export function exampleComparison(
  measure: MeasureId,
  legs: "both" | "single",
  first: readonly number[],
  second: readonly number[],
  changes: Partial<Comparison> = {},
): Comparison {
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const index = (100 * mean(first)) / mean(second);
  const impulse = measure.endsWith("Impulse") && legs === "both";
  const side = (name: Side, values: readonly number[]) => ({
    side: name,
    values,
    mean: mean(values),
    ...(impulse && { meanPerBodyMass: mean(values) / 68.6 }),
  });
  return {
    test: "countermovementJump",
    legs,
    measure,
    unit: impulse ? "N.s" : measure === "peakLandingForce" ? "N" : "m",
    basis: "involved-uninvolved",
    first: side("right", first),
    second: side("left", second),
    index,
    intervals: [
      { confidence: 0.8, low: index - 2, high: index + 2 },
      { confidence: 0.95, low: index - 4, high: index + 4.5 },
    ],
    intervalNote: "Fieller interval, paired within each two-leg trial.",
    intervalFrom: legs === "both" ? "paired trials" : "independent trials",
    ...(legs === "both" && { plates: "proved" as const }),
    role: "criterion",
    weaker: "",
    ...changes,
  };
}

export const exampleComparisons: readonly Comparison[] = [
  exampleComparison("jumpHeightImpulse", "single", [0.115, 0.119, 0.117], [0.142, 0.137, 0.141]),
  exampleComparison("brakingImpulse", "both", [93.2, 92.1, 94], [108.9, 109.5, 110]),
  exampleComparison("propulsionImpulse", "both", [153, 152, 155], [169, 168, 168.5]),
  exampleComparison("peakLandingForce", "both", [959, 990, 1010], [1298, 1250, 1310], { role: "information" }),
];

export function exampleCriterionResult(
  index: number,
  changes: Partial<Omit<CriterionResult, "criterion">>,
): CriterionResult {
  const criterion = exampleCriteria[index];
  if (criterion === undefined) throw new RangeError(`There is no example criterion ${index}.`);
  return { criterion, status: "not-met", reason: "", moreTrials: "", caution: "", ...changes };
}

const exampleCriterionResults: readonly CriterionResult[] = [
  exampleCriterionResult(0, {
    estimate: 83.6,
    interval: { confidence: 0.8, low: 81.6, high: 85.6 },
    reason: "The right leg jumps 11.7 cm, the left 14.0 cm: 84 % (80 % interval 82 to 86), below 90 %.",
    caution: "The left leg jumped 15.6 cm before the injury: symmetry overstates recovery.",
  }),
  exampleCriterionResult(1, {
    estimate: 85.1,
    interval: { confidence: 0.8, low: 83.1, high: 87.1 },
    reason: "The right leg gives 93 N·s in braking, the left 109 N·s: 85 % (83 to 87), below 90 %.",
  }),
  exampleCriterionResult(2, {
    status: "too-close-to-call",
    estimate: 91,
    lean: "met",
    interval: { confidence: 0.8, low: 89, high: 93 },
    reason: "The right leg gives 153 N·s in propulsion, the left 169 N·s: 91 % (89 to 93), on both sides of 90 %.",
    moreTrials: "More trials today cannot settle this.",
  }),
  exampleCriterionResult(3, {
    estimate: 75,
    interval: { confidence: 0.8, low: 72, high: 78 },
    reason: "The right leg jumps 11.7 cm, the left jumped 15.6 cm before the injury: 75 %, below 90 %.",
  }),
];

const exampleReferences: readonly ReferenceValue[] = (["left", "right"] as const).map((side) => ({
  test: "countermovementJump",
  legs: "single",
  measure: "jumpHeightImpulse",
  side,
  value: side === "left" ? 0.156 : 0.15,
  unit: "m",
  date: "2025-08-20",
  origin: "pre-injury",
}));

export const exampleDescription: SessionDescription = {
  athlete: { code: "GHK-07", name: "Maren Tveitlund", sex: "female", birthYear: 2003, sport: "handball" },
  involved: "right",
  injury: "right knee, anterior cruciate ligament reconstruction, hamstring graft, 12 March 2026",
  date: "2026-10-14",
  milestone: "Month 7, team training without contact",
  cautions: { answers: [answersOf("2026-10-14"), changeAnswersOf("2026-10-14")] },
  readings: [readingOf("2026-10-14", "before", 0), readingOf("2026-10-14", "during", 1)],
  simulated: true,
  references: exampleReferences,
};

export function exampleSession(changes: Partial<SessionResult> = {}): SessionResult {
  return {
    folder: "month-7",
    description: exampleDescription,
    trials: exampleTrials,
    comparisons: exampleComparisons,
    criteriaSet: exampleSet,
    criteria: exampleCriterionResults,
    gate: gateOf(changes.description ?? exampleDescription, defaultSettings),
    knee: kneeRows(
      gateOf(changes.description ?? exampleDescription, defaultSettings),
      (changes.description ?? exampleDescription).involved,
    ),
    findings: [],
    ...changes,
  };
}

/** The same trials with nobody injured: left against right, no criterion applies. */
export function healthySession(): SessionResult {
  return exampleSession({
    folder: "first-visit",
    description: { athlete: { code: "GHK-12" }, involved: "none", date: "2026-09-02", simulated: true },
    comparisons: exampleComparisons.map((each) =>
      swapSides(each, { basis: "left-right", weaker: "The right is weaker." }),
    ),
    criteria: exampleCriterionResults.map((each) => ({
      criterion: each.criterion,
      status: "not-applicable" as const,
      reason: "Nobody is injured, so there is no involved side to compare.",
      moreTrials: "",
      caution: "",
    })),
  });
}

/** Both knees involved: values, no index, no symmetry status. */
export function bothInvolvedSession(): SessionResult {
  return exampleSession({
    description: { ...exampleDescription, involved: "both", injury: "both knees" },
    comparisons: exampleComparisons.map((each) => {
      const { index: _index, ...rest } = swapSides(each, { basis: "values-only", intervals: [] });
      return { ...rest, intervalNote: "Both knees are involved, so there is no index." };
    }),
    criteria: exampleCriterionResults.map((each) => ({
      criterion: each.criterion,
      status: "not-applicable" as const,
      reason: "Both knees are involved, so symmetry gets no status.",
      moreTrials: "",
      caution: "",
    })),
  });
}

const stoppedReason =
  "The session was stopped: Pain 5 of 10 in the single-leg trials. Effusion 1+ is above the clinic's limit (trace).";

const stoppedDescription: SessionDescription = {
  ...exampleDescription,
  pain: 5,
  effusion: "1+",
  cautions: notKnown.cautions ?? {},
  stopped: { reason: "Pain 5 of 10 in the single-leg trials." },
};

/** The day that is not to be trusted: effusion 1+, stopped for pain, statuses withheld. */
export function stoppedSession(): SessionResult {
  return exampleSession({
    description: stoppedDescription,
    gate: gateOf(stoppedDescription, defaultSettings),
    criteria: exampleCriterionResults.map((each) => ({
      criterion: each.criterion,
      status: "withheld-today" as const,
      reason: stoppedReason,
      moreTrials: "",
      caution: "",
    })),
  });
}

function swapSides(comparison: Comparison, changes: Partial<Comparison>): Comparison {
  const { first, second } = comparison;
  return {
    ...comparison,
    first: second.side === "left" ? second : first,
    second: second.side === "left" ? first : second,
    ...(comparison.index !== undefined && { index: 10_000 / comparison.index }),
    intervals: comparison.intervals.map(({ confidence, low, high }) => ({
      confidence,
      low: 10_000 / high,
      high: 10_000 / low,
    })),
    ...changes,
  };
}
