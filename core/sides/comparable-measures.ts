import type { TestKind } from "../test-kind.ts";

/** What may be compared between sides, and how (METHODS §8). */
export interface ComparableMeasure {
  readonly measure: string;
  readonly tests: readonly TestKind[];
  /** `both`: left and right within one two-leg trial on two plates; `single`: between single-leg trials. */
  readonly legs: "both" | "single";
  /** Times are never put into an index: a difference is shown. */
  readonly as: "index" | "difference";
  readonly role: "criterion" | "information";
  /** Whether the largest value is the best one; where it is not, the statistic "best" falls back to the mean. */
  readonly largestIsBest: boolean;
}

const jump: readonly TestKind[] = ["countermovementJump"];

/**
 * In the order of screens. Gross impulse is compared within a two-leg trial only, because both limbs share its
 * duration there; between single-leg trials it would flatter the slower leg, and net impulse, which repeats the square
 * root of height, informs only. A height by flight time holds the landing posture: information beside the height by
 * impulse.
 */
export const comparableMeasures: readonly ComparableMeasure[] = [
  { measure: "brakingImpulse", legs: "both", as: "index", role: "criterion", largestIsBest: true, tests: jump },
  { measure: "propulsionImpulse", legs: "both", as: "index", role: "criterion", largestIsBest: true, tests: jump },
  {
    measure: "brakingLimbNetImpulse",
    legs: "both",
    as: "index",
    role: "information",
    largestIsBest: true,
    tests: jump,
  },
  {
    measure: "propulsionLimbNetImpulse",
    legs: "both",
    as: "index",
    role: "information",
    largestIsBest: true,
    tests: jump,
  },
  { measure: "peakLandingForce", legs: "both", as: "index", role: "information", largestIsBest: false, tests: jump },
  { measure: "landingImpulse", legs: "both", as: "index", role: "information", largestIsBest: false, tests: jump },
  { measure: "jumpHeightImpulse", legs: "single", as: "index", role: "criterion", largestIsBest: true, tests: jump },
  {
    measure: "jumpHeightFlightTime",
    legs: "single",
    as: "index",
    role: "information",
    largestIsBest: true,
    tests: jump,
  },
  { measure: "brakingNetImpulse", legs: "single", as: "index", role: "information", largestIsBest: true, tests: jump },
  {
    measure: "propulsionNetImpulse",
    legs: "single",
    as: "index",
    role: "information",
    largestIsBest: true,
    tests: jump,
  },
  { measure: "peakLandingForce", legs: "single", as: "index", role: "information", largestIsBest: false, tests: jump },
  {
    measure: "timeToTakeoff",
    legs: "single",
    as: "difference",
    role: "information",
    largestIsBest: false,
    tests: jump,
  },
  {
    measure: "timeToStabilisation",
    legs: "single",
    as: "difference",
    role: "information",
    largestIsBest: false,
    tests: jump,
  },
];
