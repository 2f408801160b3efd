import { type TestFacts, type TestKind, testFacts, testKinds } from "./test-kind.ts";

/** What a measure, or a comparison of it, needs of a test. */
export type TestTrait =
  | "athlete"
  | "start from standing"
  | "dip"
  | "turn"
  | "flight"
  | "contact"
  | "drop"
  | "hops"
  | "landing";

const has: Readonly<Record<TestTrait, (facts: TestFacts) => boolean>> = {
  athlete: () => true,
  "start from standing": ({ weighedBy }) => weighedBy === "standing before",
  dip: ({ turn }) => turn === "dip",
  // The contacts of a bout are told by their times alone: no velocity is followed through them.
  turn: ({ turn, flights }) => turn !== "none" && flights === "one",
  flight: ({ flights }) => flights === "one",
  contact: ({ turn, flights }) => turn === "contact" && flights === "one",
  drop: ({ start }) => start === "box",
  hops: ({ flights }) => flights === "many",
  landing: ({ flights }) => flights !== "many",
};

/** The tests that have a trait: what needs it applies to these, and to no other. */
export function testsWith(trait: TestTrait): readonly TestKind[] {
  return testKinds.filter((test) => has[trait](testFacts(test)));
}

/** True where a test has a trait. */
export function hasTrait(test: TestKind, trait: TestTrait): boolean {
  return has[trait](testFacts(test));
}
