import type { InvolvedSide, Side } from "../ground/limb.ts";
import type { TestKind } from "../ground/test-kind.ts";

/** One test of a protocol, with how often it is done. */
export interface ProtocolTest {
  readonly test: TestKind;
  /** `single`: once with each leg. */
  readonly legs: "both" | "single";
  /** Valid trials wanted, a leg where it is done on single legs. */
  readonly trials: number;
  /** Most attempts, a leg where it is done on single legs; valid or not, every landing counts. */
  readonly mostAttempts: number;
  /** Most practice jumps before it, a leg where it is done on single legs; absent where the protocol does not say. */
  readonly practice?: number;
  /** Box to step off, metres; only in tests that start from one. */
  readonly dropHeightMetres?: number;
  /** Of the trials wanted, so many with each leg leading; only in two-leg tests from a box. */
  readonly perLeadingLeg?: number;
  /** Done with this leg alone; absent where both legs do it. */
  readonly only?: "uninvolved";
  /** The treating clinician who added the test to what the protocol has by itself. */
  readonly addedBy?: string;
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
  /** Tests that a named treating clinician may add. */
  readonly mayAdd?: readonly ProtocolTest[];
  readonly notYet: readonly ProtocolExclusion[];
  /** Each a whole sentence. */
  readonly stopRules: readonly string[];
  /** Most landings of one day, practice jumps included: on two legs, and on each single leg. */
  readonly landingsADay?: { readonly twoLeg: number; readonly perLeg: number };
  readonly rest?: {
    /** At least. */
    readonly betweenTestsSeconds: number;
    readonly betweenJumpsSeconds: { readonly least: number; readonly most: number };
  };
  /** What else to know, each a whole sentence. */
  readonly notes?: readonly string[];
}

/** The leg that a test is done with first: the uninvolved one, or the right where nobody is injured. */
export function legsInOrder(involved: InvolvedSide | undefined): readonly [Side, Side] {
  return involved === "right" ? ["left", "right"] : ["right", "left"];
}

/** The legs that do a test, in order; none where only the uninvolved leg does it and it is not known which that is. */
export function limbsOf({ legs, only }: ProtocolTest, involved: InvolvedSide | undefined): readonly ("both" | Side)[] {
  if (legs === "both") return ["both"];
  if (only === undefined) return legsInOrder(involved);
  return involved === "left" || involved === "right" ? [legsInOrder(involved)[0]] : [];
}
