import { type TestFacts, type TestKind, testFacts } from "../../ground/test-kind.ts";

/** The trade's name of each test, in full and in lower case. */
const labels: Readonly<Record<TestKind, string>> = {
  countermovementJump: "countermovement jump",
  countermovementJumpArmSwing: "countermovement jump with arm swing",
  squatJump: "squat jump",
  dropJump: "drop jump",
  repeatedHops: "repeated hops",
  dropLanding: "drop landing",
};

/** Names that are of several: "repeated hops", not "a repeated hops". */
const plurals: ReadonlySet<TestKind> = new Set(["repeatedHops"]);

const arms: Readonly<Record<TestFacts["arms"], string>> = { "on hips": "hands on hips", free: "arms hanging" };

/** How the tests are called. */
export const tests = {
  /** The trade's name of a test, in full and in lower case. */
  label: (test: TestKind): string => labels[test],
  /** The trade's name of a test behind its article: "a drop jump", "repeated hops". */
  withArticle: (test: TestKind): string => (plurals.has(test) ? labels[test] : `a ${labels[test]}`),
  /** How the arms are held in quiet standing, as it is said to the athlete. */
  armsAtRest: (test: TestKind): string => arms[testFacts(test).arms],
};
