import { describe, expect, test } from "vitest";
import { sessionCautions } from "../../../core/protocol/session-cautions.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { answersOf, readingOf } from "../gate/gates.ts";
import { makeSession, makeTrial } from "./make-session.ts";

const date = "2026-10-13";
const protocol = shippedProtocol("return-to-pivoting-sport");
if (protocol === undefined) throw new Error("The protocol ships.");
const described: SessionDescription = { date, involved: "right", protocol, cautions: {} };
const asked: SessionDescription = {
  ...described,
  cautions: { answers: [answersOf(date)] },
  readings: [readingOf(date, "before", 0)],
};

const dueIn = (description: SessionDescription, jumps = 0, expected?: "singleLegJump") => {
  const trials = Array.from({ length: jumps }, () => makeTrial({ test: "countermovementJump", limb: "both" }));
  return sessionCautions(makeSession(trials, description), expected)
    .filter(({ isDue }) => isDue)
    .map(({ asking }) => asking);
};

describe("the cautions of a session", () => {
  test("are due before the first jump, once", () => {
    expect(dueIn(described)).toEqual(["session"]);
    expect(dueIn(asked)).toEqual([]);
  });

  test("are due again, as what can have changed, when a single-leg or drop test comes next", () => {
    expect(dueIn(asked, 3)).toEqual([]);
    expect(dueIn(asked, 4)).toEqual(["change"]);
    expect(dueIn(asked, 0, "singleLegJump")).toEqual(["change"]);
  });
});
