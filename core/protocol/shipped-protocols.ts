import type { CourseFacts } from "../ground/test-course.ts";
import { testFacts, testKinds } from "../ground/test-kind.ts";
import type { Protocol, ProtocolExclusion, ProtocolTest } from "../stated/protocol-schema.ts";

/** Stop rules that hold at every stage; common practice, a clinic adds its own. */
const stopRules: readonly string[] = [
  "Stop when pain rises above the clinic's limit, when the knee gives way or locks, or when it swells.",
  "Stop when the athlete asks to, or when landings lose control twice in a row.",
];

/** Common practice. */
const rest = { betweenTestsSeconds: 120, betweenJumpsSeconds: { least: 30, most: 60 } };

const often = { trials: 4, mostAttempts: 6, practice: 2 };

const twoLegJump: ProtocolTest = { test: "countermovementJump", legs: "both", ...often };

/** Two legs before one, from the floor before the box: the same tests in the stages before training and before sport. */
const everyTest: Pick<Protocol, "tests" | "notYet" | "stopRules" | "landingsADay" | "rest" | "notes"> = {
  tests: [
    twoLegJump,
    { test: "dropJump", legs: "both", ...often, dropHeightMetres: 0.3, perLeadingLeg: 2 },
    { test: "countermovementJump", legs: "single", ...often },
    { test: "dropJump", legs: "single", ...often, dropHeightMetres: 0.2 },
  ],
  notYet: [],
  stopRules,
  landingsADay: { twoLeg: 30, perLeg: 26 },
  rest,
  notes: ["Hop distances are measured on another day."],
};

/**
 * Protocols that ship with the program, in the order of the stages: how often, how many practice jumps and landings a
 * day are common practice; each is editable as a copy. A protocol's version rises with every change.
 */
export const shippedProtocols: readonly Protocol[] = [
  {
    id: "pre-operative",
    name: "No jumps before the operation",
    version: 1,
    stage: "Pre-operative visit",
    tests: [],
    mayAdd: [
      { test: "countermovementJump", legs: "single", trials: 3, mostAttempts: 4, practice: 1, only: "uninvolved" },
    ],
    notYet: everyTestOf(
      {
        jump: {
          both: "the involved knee does not jump before the operation",
          single: "jumps on one leg wait for the operation",
        },
        drop: {
          both: "landing from a box waits for the operation",
          single: "landing from a box waits for the operation",
        },
        hops: { both: "hopping waits for the operation", single: "hopping waits for the operation" },
      },
      {
        test: "countermovementJump",
        legs: "single",
        reason: "only the uninvolved leg may, where a named clinician adds it",
      },
    ),
    stopRules,
    landingsADay: { twoLeg: 0, perLeg: 5 },
    rest,
  },
  {
    id: "return-to-running",
    name: "Two-leg jumps before running",
    version: 2,
    stage: "Return to running",
    tests: [twoLegJump],
    notYet: everyTestOf({
      jump: { single: "landing on one leg comes after running" },
      drop: { both: "landing from a box comes after running", single: "landing on one leg from a box comes last" },
      hops: { both: "hopping comes after running", single: "hopping on one leg comes after running" },
    }),
    stopRules,
    landingsADay: { twoLeg: 20, perLeg: 0 },
    rest,
  },
  {
    id: "return-to-training",
    name: "Jumps on two legs, from the box, and on one, before training",
    version: 1,
    stage: "Return to training",
    ...everyTest,
  },
  {
    id: "return-to-pivoting-sport",
    name: "Jumps on two legs, from the box, and on one",
    version: 2,
    stage: "Return to pivoting sport",
    ...everyTest,
  },
];

/**
 * Every test that loads a knee in one of these ways, with the reason why not yet. What a stage holds off is the load, so
 * a kind of test that joins the program is held off with its like, which is no new version.
 */
function everyTestOf(
  reasons: Readonly<Record<CourseFacts["load"], Readonly<Partial<Record<ProtocolTest["legs"], string>>>>>,
  except?: ProtocolExclusion,
): readonly ProtocolExclusion[] {
  return testKinds.flatMap((test) =>
    (["both", "single"] as const).flatMap((legs) => {
      if (except?.test === test && except.legs === legs) return [except];
      const reason = reasons[testFacts(test).load][legs];
      return reason === undefined ? [] : [{ test, legs, reason }];
    }),
  );
}

/** A shipped protocol by its identifier; undefined where none is called so. */
export function shippedProtocol(id: string): Protocol | undefined {
  return shippedProtocols.find((protocol) => protocol.id === id);
}
