import type { Limb } from "../ground/limb.ts";
import type { CourseFacts } from "../ground/test-course.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";

/** Tests by how hard they are on a knee: what a limit, a gate or a week speaks of. */
export const testLoads = ["twoLegJump", "twoLegDropOrHops", "singleLegJump", "singleLegDrop"] as const;

export type TestLoad = (typeof testLoads)[number];

/** Everything but jumps on two legs from standing. */
export const singleLegAndDropLoads: readonly TestLoad[] = testLoads.filter((load) => load !== "twoLegJump");

/** A test with the limbs that jump in it. */
export interface LoadingTest {
  readonly test: TestKind;
  readonly legs: "both" | "single";
}

/** Hops on one leg count with single-leg jumps: they fall from no box. */
const loads: Readonly<Record<CourseFacts["load"], Readonly<Record<LoadingTest["legs"], TestLoad>>>> = {
  jump: { both: "twoLegJump", single: "singleLegJump" },
  hops: { both: "twoLegDropOrHops", single: "singleLegJump" },
  drop: { both: "twoLegDropOrHops", single: "singleLegDrop" },
};

export function testLoad({ test, legs }: LoadingTest): TestLoad {
  return loads[testFacts(test).load][legs];
}

/** The load of a trial's test; undefined while its test or limb is unknown. */
export function trialLoad({ test, limb }: { readonly test?: TestKind; readonly limb?: Limb }): TestLoad | undefined {
  return test === undefined || limb === undefined
    ? undefined
    : testLoad({ test, legs: limb === "both" ? "both" : "single" });
}

const words: Readonly<Record<TestLoad, string>> = {
  twoLegJump: "two-leg jumps",
  twoLegDropOrHops: "two-leg drop tests and hops",
  singleLegJump: "single-leg jumps and hops",
  singleLegDrop: "single-leg drop tests",
};

/** "single-leg jumps and hops". */
export function loadWords(load: TestLoad): string {
  return words[load];
}
