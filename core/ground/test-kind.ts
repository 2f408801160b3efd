import { type CourseFacts, courses, type TestCourse } from "./test-course.ts";

/** The jump tests (METHODS §6); these identifiers are public names. */
export const testKinds = [
  "countermovementJump",
  "countermovementJumpArmSwing",
  "squatJump",
  "dropJump",
  "repeatedHops",
  "dropLanding",
] as const;

export type TestKind = (typeof testKinds)[number];

/**
 * Everything the stages ask of a kind of test. A kind is added here, in the words by which files name it (`test-words.ts`)
 * and in what each language calls it (`core/words`), nowhere else.
 */
export interface TestFacts extends CourseFacts {
  /** What the arms do: on the hips all through, or free to swing. */
  readonly arms: "on hips" | "free";
  /**
   * The kind that this one cannot be told from by its trace: a trace is offered as that one, never as this, and a name
   * that says both says this one. Trials of the two are never compared.
   */
  readonly variantOf?: TestKind;
}

const facts: Readonly<Record<TestKind, TestFacts>> = {
  countermovementJump: { arms: "on hips", ...courses.dipAndJump },
  countermovementJumpArmSwing: { arms: "free", variantOf: "countermovementJump", ...courses.dipAndJump },
  squatJump: { arms: "on hips", ...courses.holdAndJump },
  dropJump: { arms: "on hips", ...courses.dropAndJump },
  repeatedHops: { arms: "on hips", ...courses.hops },
  dropLanding: { arms: "on hips", ...courses.dropAndLand },
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

/** True where a trace that looks like the one kind may as well be of the other, which is a variant of it. */
export function mayBeVariant(seen: TestKind | undefined, other: TestKind | undefined): boolean {
  return seen !== undefined && other !== undefined && facts[other].variantOf === seen;
}
