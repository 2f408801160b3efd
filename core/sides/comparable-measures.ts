import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { TestKind } from "../ground/test-kind.ts";
import { type TestTrait, testsWith } from "../ground/test-traits.ts";

/** What may be compared between sides, and how (METHODS §8). */
export interface ComparableMeasure {
  readonly measure: MeasureId;
  readonly tests: readonly TestKind[];
  /** `both`: left and right within one two-leg trial on two plates; `single`: between single-leg trials. */
  readonly legs: "both" | "single";
  /** Times are never put into an index: a difference is shown. */
  readonly as: "index" | "difference";
  readonly role: "criterion" | "information";
  /** Whether the largest value is the best one; where it is not, the statistic "best" falls back to the mean. */
  readonly largestIsBest: boolean;
}

type Rest = Pick<ComparableMeasure, "legs" | "tests">;

const criterion = (measure: MeasureId, { legs, tests }: Rest): ComparableMeasure => ({
  measure,
  legs,
  as: "index",
  role: "criterion",
  largestIsBest: true,
  tests,
});

const information = (measure: MeasureId, rest: Rest): ComparableMeasure => ({
  ...criterion(measure, rest),
  role: "information",
});

const load = (measure: MeasureId, rest: Rest): ComparableMeasure => ({
  ...information(measure, rest),
  largestIsBest: false,
});

const difference = (measure: MeasureId, rest: Rest): ComparableMeasure => ({
  ...load(measure, rest),
  as: "difference",
});

const both = (trait: TestTrait): Rest => ({ legs: "both", tests: testsWith(trait) });
const single = (trait: TestTrait): Rest => ({ legs: "single", tests: testsWith(trait) });

/**
 * In the order of screens. Gross impulse is compared within a two-leg trial only, because both limbs share its
 * duration there; between single-leg trials it would flatter the slower leg, and net impulse, which repeats the square
 * root of height, informs only. A height by flight time holds the landing posture: information beside the height by
 * impulse where a jump starts from standing, the height of choice where it starts from a box. Landings inform only.
 */
export const comparableMeasures: readonly ComparableMeasure[] = [
  criterion("brakingImpulse", both("turn")),
  criterion("propulsionImpulse", both("flight")),
  information("brakingLimbNetImpulse", both("turn")),
  information("propulsionLimbNetImpulse", both("flight")),
  load("peakLandingForce", both("landing")),
  load("landingImpulse", both("landing")),
  criterion("jumpHeightImpulse", single("start from standing")),
  information("jumpHeightFlightTime", single("start from standing")),
  criterion("jumpHeightFlightTime", single("contact")),
  information("jumpHeightImpulse", single("contact")),
  criterion("reactiveStrengthIndex", single("contact")),
  criterion("reactiveStrengthIndexBestFive", single("hops")),
  information("brakingNetImpulse", single("dip")),
  information("propulsionNetImpulse", single("start from standing")),
  load("peakLandingForce", single("landing")),
  difference("timeToTakeoff", single("start from standing")),
  difference("contactTime", single("contact")),
  difference("timeToStabilisation", single("landing")),
];
