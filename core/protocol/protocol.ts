import type { Side } from "../limb.ts";
import type { TestKind } from "../test-kind.ts";

/** One test of a protocol, with how often it is done. */
export interface ProtocolTest {
  readonly test: TestKind;
  /** `single`: once with each leg. */
  readonly legs: "both" | "single";
  /** Valid trials wanted, a leg where it is done on single legs. */
  readonly trials: number;
  /** Most attempts, a leg where it is done on single legs; valid or not, every landing counts. */
  readonly mostAttempts: number;
  /** Box to step off, metres; only in tests that start from one. */
  readonly dropHeightMetres?: number;
}

/** A test that is not done at this stage, with the reason in words. */
export interface ProtocolExclusion {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  readonly reason: string;
}

/** What is tested at a stage: which tests in which order, how often, what is not done yet, and when to stop. */
export interface Protocol {
  readonly id: string;
  readonly name: string;
  readonly version: number;
  /** The stage in words ("month 4, before running"). */
  readonly stage: string;
  /** In the order of testing. */
  readonly tests: readonly ProtocolTest[];
  readonly notYet: readonly ProtocolExclusion[];
  /** Each a whole sentence. */
  readonly stopRules: readonly string[];
}

/** The leg that a test is done with first: the uninvolved one, or the right where nobody is injured. */
export function legsInOrder(involved: Side | "both" | "none" | undefined): readonly [Side, Side] {
  return involved === "right" ? ["left", "right"] : ["right", "left"];
}
