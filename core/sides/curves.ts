import type { Bearer, Side } from "../ground/limb.ts";
import type { TestCourse } from "../ground/test-course.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";

/** The events that curves can be aligned at. */
export const alignments = ["takeoff", "onset", "touchdown"] as const;

export type Alignment = (typeof alignments)[number];

const alignmentsByCourse: Readonly<Record<TestCourse, readonly [Alignment, ...Alignment[]]>> = {
  dipAndJump: ["takeoff", "onset"],
  holdAndJump: ["takeoff", "onset"],
  dropAndJump: ["touchdown", "takeoff"],
  hops: ["touchdown", "takeoff"],
  dropAndLand: ["touchdown"],
};

/** Where the curves of a test can be aligned, the usual event first. `touchdown` is that of the contact. */
export function alignmentsOf(test: TestKind): readonly [Alignment, ...Alignment[]] {
  return alignmentsByCourse[testFacts(test).course];
}

/** Curves of one side, or of one plate while feet are in doubt, on a common time axis. */
export type SideCurves = Bearer<Side> & CurvesOfSide;

interface CurvesOfSide {
  /** One curve a trial (a hop, of repeated hops), force in body weights; same length as the time axis. */
  readonly curves: readonly { readonly file: string; readonly trial: number; readonly values: Float64Array }[];
  /** Mean over the trials, body weights. */
  readonly mean: Float64Array;
  /** Standard deviation over the trials (n − 1), body weights; empty with fewer than two trials. */
  readonly standardDeviation: Float64Array;
}

/** Involved against uninvolved trials, or plate 1 against plate 2, of one test, aligned at one event. */
export interface CurveOverlay {
  readonly alignedAt: Alignment;
  /** Seconds from the event. */
  readonly timeSeconds: Float64Array;
  readonly first: SideCurves;
  readonly second: SideCurves;
}
