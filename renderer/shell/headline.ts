import type { TestCourse } from "../../core/ground/test-course.ts";
import { type TestKind, testFacts } from "../../core/ground/test-kind.ts";

/** The measure by which a trial of a test is told from the others at a glance. */
export interface Headline {
  readonly id: string;
  /** What the value is, below the heading of its group. */
  readonly words: string;
  /** A second one that belongs beside it. */
  readonly beside?: { readonly id: string; readonly words: string };
}

const height: Headline = { id: "jumpHeightImpulse", words: "jump height by impulse" };

const headlines: Readonly<Record<TestCourse, Headline>> = {
  dipAndJump: height,
  holdAndJump: height,
  dropAndJump: {
    id: "reactiveStrengthIndex",
    words: "reactive strength index",
    beside: { id: "contactTime", words: "contact" },
  },
  hops: { id: "reactiveStrengthIndexBestFive", words: "reactive strength index, best five hops" },
  dropAndLand: { id: "peakLandingForcePerBodyWeight", words: "peak force in body weights" },
};

export function headlineOf(test: TestKind): Headline {
  return headlines[testFacts(test).course];
}
