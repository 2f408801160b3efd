/** The jump tests (METHODS §6); these identifiers are public names. */
export const testKinds = ["countermovementJump", "squatJump", "dropJump", "repeatedHops", "dropLanding"] as const;

export type TestKind = (typeof testKinds)[number];

/** The tests this version can analyse: all of them. */
export const availableTests: readonly TestKind[] = [
  "countermovementJump",
  "squatJump",
  "dropJump",
  "repeatedHops",
  "dropLanding",
];

const labels: Readonly<Record<TestKind, string>> = {
  countermovementJump: "countermovement jump",
  squatJump: "squat jump",
  dropJump: "drop jump",
  repeatedHops: "repeated hops",
  dropLanding: "drop landing",
};

/** True for jumps whose weight and velocity are told by standing on the plate before them. */
export function startsFromStanding(test: TestKind | undefined): boolean {
  return test === "countermovementJump" || test === "squatJump";
}

/** The trade's name of a test, in full and in lower case. */
export function testLabel(test: TestKind): string {
  return labels[test];
}
