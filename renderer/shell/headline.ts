import type { MeasureId } from "../../core/ground/measures/catalogue.ts";
import type { TestCourse } from "../../core/ground/test-course.ts";
import { type TestKind, testFacts } from "../../core/ground/test-kind.ts";
import { words } from "../words/words.ts";

const prose = words.screens.commonWords;

/** The measure by which a trial of a test is told from the others at a glance. */
export interface Headline {
  readonly id: MeasureId;
  /** What the value is, below the heading of its group. */
  readonly words: string;
  /** A second one that belongs beside it. */
  readonly beside?: { readonly id: MeasureId; readonly words: string };
}

const height: Headline = { id: "jumpHeightImpulse", words: prose.jumpHeight };

const headlines: Readonly<Record<TestCourse, Headline>> = {
  dipAndJump: height,
  holdAndJump: height,
  dropAndJump: {
    id: "reactiveStrengthIndex",
    words: prose.reactiveStrengthIndex,
    beside: { id: "contactTime", words: prose.contact },
  },
  hops: { id: "reactiveStrengthIndexBestFive", words: prose.bestFiveHops },
  dropAndLand: { id: "peakLandingForcePerBodyWeight", words: prose.peakForce },
};

export function headlineOf(test: TestKind): Headline {
  return headlines[testFacts(test).course];
}
