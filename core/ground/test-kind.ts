import { type CourseFacts, courses, type TestCourse } from "./test-course.ts";

/** The jump tests (METHODS §6); these identifiers are public names. */
export const testKinds = ["countermovementJump", "squatJump", "dropJump", "repeatedHops", "dropLanding"] as const;

export type TestKind = (typeof testKinds)[number];

/** Everything the stages ask of a kind of test. A kind is added here and in its words (`test-words.ts`), nowhere else. */
export interface TestFacts extends CourseFacts {
  /** The trade's name, in full and in lower case. */
  readonly label: string;
  /** True where the name is of several: "repeated hops", not "a repeated hops". */
  readonly isPlural?: boolean;
  /**
   * The kind that this one cannot be told from by its trace: a trace is offered as that one, never as this, and a name
   * that says both says this one. Trials of the two are never compared.
   */
  readonly variantOf?: TestKind;
}

const facts: Readonly<Record<TestKind, TestFacts>> = {
  countermovementJump: { label: "countermovement jump", ...courses.dipAndJump },
  squatJump: { label: "squat jump", ...courses.holdAndJump },
  dropJump: { label: "drop jump", ...courses.dropAndJump },
  repeatedHops: { label: "repeated hops", isPlural: true, ...courses.hops },
  dropLanding: { label: "drop landing", ...courses.dropAndLand },
};

/** What is known of a kind of test. */
export function testFacts(test: TestKind): TestFacts {
  return facts[test];
}

/** The kind that a trace of this course is offered as. */
export function kindOfTrace(course: TestCourse): TestKind {
  const kind = testKinds.find((each) => facts[each].course === course && facts[each].variantOf === undefined);
  if (kind === undefined) throw new RangeError(`No kind of test takes the course ${course}.`);
  return kind;
}

/** True for jumps whose weight and velocity are told by standing on the plate before them. */
export function startsFromStanding(test: TestKind | undefined): boolean {
  return test !== undefined && facts[test].weighedBy === "standing before";
}

/** True for tests that start by stepping off a box; only there a box height means anything. */
export function startsFromBox(test: TestKind): boolean {
  return facts[test].start === "box";
}

/** The trade's name of a test, in full and in lower case. */
export function testLabel(test: TestKind): string {
  return facts[test].label;
}

/** The trade's name of a test behind its article: "a drop jump", "repeated hops". */
export function withArticle(test: TestKind): string {
  const { label, isPlural } = facts[test];
  return isPlural === true ? label : `a ${label}`;
}
