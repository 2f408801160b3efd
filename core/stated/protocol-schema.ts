import { z } from "zod";
import type { SchemaType } from "../ground/schema-type.ts";
import { dropHeight, legs, testKind, text } from "./schema-parts.ts";

/** Both complete "… is expected". */
const expectedEnoughAttempts = "at least as many attempts as trials";
const expectedLeadsWithinTrials = "no more trials with each leg leading than trials in all";

const trialCount = z.int().min(1).max(30);
const seconds = z.number().min(0).max(3600);
const landings = z.int().min(0).max(1000);

const testOnLegs = z.strictObject({
  test: testKind,
  /** `single`: once with each leg. */
  legs,
});

/** One test of a protocol, with how often it is done. */
const protocolTestSchema = testOnLegs
  .extend({
    /** Valid trials wanted, a leg where it is done on single legs. */
    trials: trialCount,
    /** Most attempts, a leg where it is done on single legs; valid or not, every landing counts. */
    mostAttempts: trialCount,
    /** Most practice jumps before it, a leg where it is done on single legs; absent where the protocol does not say. */
    practice: z.int().min(0).max(30).exactOptional(),
    /** Box to step off; only in tests that start from one. */
    dropHeightMetres: dropHeight.exactOptional(),
    /** Of the trials wanted, so many with each leg leading; only in two-leg tests from a box. */
    perLeadingLeg: trialCount.exactOptional(),
    /** Done with this leg alone; absent where both legs do it. */
    only: z.literal("uninvolved").exactOptional(),
    /** The treating clinician who added the test to what the protocol has by itself. */
    addedBy: text.exactOptional(),
  })
  .refine((entry) => entry.mostAttempts >= entry.trials, expectedEnoughAttempts)
  .refine((entry) => 2 * (entry.perLeadingLeg ?? 0) <= entry.trials, expectedLeadsWithinTrials);

/** A test that is not done at this stage, with the reason in words. */
const protocolExclusionSchema = testOnLegs.extend({ reason: text });

/** What is tested at a stage: which tests in which order, how often, what is not done yet, and when to stop. */
export const protocolSchema = z.strictObject({
  id: text,
  name: text,
  version: z.int().min(1),
  /** The stage in words ("month 4, before running"). */
  stage: text,
  /** In the order of testing. */
  tests: z.array(protocolTestSchema).readonly(),
  /** Tests that a named treating clinician may add. */
  mayAdd: z.array(protocolTestSchema).readonly().exactOptional(),
  notYet: z.array(protocolExclusionSchema).readonly(),
  /** Each a whole sentence. */
  stopRules: z.array(text).readonly(),
  /** Most landings of one day, practice jumps included: on two legs, and on each single leg. */
  landingsADay: z.strictObject({ twoLeg: landings, perLeg: landings }).exactOptional(),
  rest: z
    .strictObject({
      /** At least. */
      betweenTestsSeconds: seconds,
      betweenJumpsSeconds: z.strictObject({ least: seconds, most: seconds }),
    })
    .exactOptional(),
  /** What else to know, each a whole sentence. */
  notes: z.array(text).readonly().exactOptional(),
});

export type Protocol = SchemaType<typeof protocolSchema>;
export type ProtocolTest = SchemaType<typeof protocolTestSchema>;
export type ProtocolExclusion = SchemaType<typeof protocolExclusionSchema>;
