import { describe, expect, test } from "vitest";
import { tooEarlyLines } from "../../../core/protocol/progress-words.ts";
import { protocolProgress } from "../../../core/protocol/protocol-progress.ts";
import { shippedProtocol, shippedProtocols } from "../../../core/protocol/shipped-protocols.ts";
import { limbsOf } from "../../../core/stated/protocol.ts";
import type { Protocol } from "../../../core/stated/protocol-schema.ts";
import { protocolSchema } from "../../../core/stated/protocol-schema.ts";
import { makeSession, makeTrial } from "./make-session.ts";

/** As the table reads: test, legs, box in metres, wanted, most and practice. */
const rowsOf = ({ tests }: Pick<Protocol, "tests">) =>
  tests.map(({ test: kind, legs, dropHeightMetres, trials, mostAttempts, practice }) =>
    [kind, legs, dropHeightMetres ?? "", `${trials}/${mostAttempts} + ${practice}`].join(" "),
  );

const whole = [
  "countermovementJump both  4/6 + 2",
  "dropJump both 0.3 4/6 + 2",
  "countermovementJump single  4/6 + 2",
  "dropJump single 0.2 4/6 + 2",
];

describe("the protocols that ship", () => {
  test("want, allow and practise what the table of the stages says, with its landings a day (common practice)", () => {
    const table = shippedProtocols.map((each) => [each.id, rowsOf(each), each.landingsADay]);
    expect(table).toEqual([
      ["pre-operative", [], { twoLeg: 0, perLeg: 5 }],
      ["return-to-running", ["countermovementJump both  4/6 + 2"], { twoLeg: 20, perLeg: 0 }],
      ["return-to-training", whole, { twoLeg: 30, perLeg: 26 }],
      ["return-to-pivoting-sport", whole, { twoLeg: 30, perLeg: 26 }],
    ]);
    expect(shippedProtocols.every((each) => each.rest?.betweenTestsSeconds === 120)).toBe(true);
  });

  test("fit into their own landings with every attempt and practice jump made", () => {
    for (const { tests, landingsADay } of shippedProtocols) {
      const most = (legs: "both" | "single") =>
        tests
          .filter((each) => each.legs === legs)
          .reduce(
            (sum, each) => sum + (each.mostAttempts + (each.practice ?? 0)) * (each.test === "dropJump" ? 2 : 1),
            0,
          );
      expect(most("both")).toBeLessThanOrEqual(landingsADay?.twoLeg ?? 0);
      expect(most("single")).toBeLessThanOrEqual(landingsADay?.perLeg ?? 0);
    }
  });

  test("keep to the schema, and have a higher version than before where they changed", () => {
    for (const each of shippedProtocols) expect(protocolSchema.parse(each)).toEqual(each);
    expect(shippedProtocol("return-to-running")?.version).toBe(2);
    expect(shippedProtocol("return-to-pivoting-sport")?.version).toBe(2);
  });

  test("let a named clinician add the uninvolved leg's jump before the operation, and the involved leg's stays too early", () => {
    const before = shippedProtocol("pre-operative")!;
    expect(rowsOf({ tests: before.mayAdd ?? [] })).toEqual(["countermovementJump single  3/4 + 1"]);
    const tests = (before.mayAdd ?? []).map((each) => ({ ...each, addedBy: "Ida Lund, physiotherapist" }));
    const protocol: Protocol = { ...before, tests };
    expect(protocolSchema.safeParse(protocol).success).toBe(true);
    expect(limbsOf(tests[0]!, "left")).toEqual(["right"]);
    const jumps = (["left", "right"] as const).map((limb) => makeTrial({ test: "countermovementJump", limb }));
    const added = protocolProgress(protocol, makeSession(jumps, { involved: "left" }));
    expect(added.tests[0]?.limbs).toMatchObject([{ limb: "right", valid: 1, wanted: 3 }]);
    expect(tooEarlyLines(added)).toHaveLength(1);
    expect(tooEarlyLines(protocolProgress(before, makeSession(jumps, { involved: "left" })))).toEqual([
      "Single-leg countermovement jump is not done at this stage (only the uninvolved leg may, where a named clinician adds it), and 2 were recorded.",
    ]);
  });
});

test("A protocol written before practice, leading legs and landings were part of one is read as it was", () => {
  const before = {
    id: "return-to-running",
    name: "Two-leg jumps before running",
    version: 1,
    stage: "Return to running",
    tests: [{ test: "countermovementJump", legs: "both", trials: 4, mostAttempts: 6 }],
    notYet: [{ test: "dropJump", legs: "both", reason: "landing from a box comes after running" }],
    stopRules: ["Stop when the athlete asks to."],
  };
  expect(protocolSchema.parse(before)).toEqual(before);
});
