import { describe, expect, test } from "vitest";
import { landingsLeft, landingsOf, landingsOfTrial } from "../../../core/protocol/landings.ts";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { makeTrial, makeTrials } from "./make-session.ts";

const touchdown = (contactIndex: number, side?: "left") =>
  ({
    name: "touchdown",
    sample: 0,
    time: 0,
    from: "detected",
    contactIndex,
    ...(side && { side }),
  }) as const;

describe("landings of a day", () => {
  test("are two for a drop jump, one for any other jump, and one for each contact of repeated hops", () => {
    expect(landingsOfTrial(makeTrial({ test: "dropJump" }))).toBe(2);
    expect(landingsOfTrial(makeTrial({ test: "countermovementJump" }))).toBe(1);
    expect(landingsOfTrial(makeTrial({ test: "squatJump" }))).toBe(1);
    expect(landingsOfTrial(makeTrial({ test: "dropLanding" }))).toBe(1);
    const contacts = [touchdown(1), touchdown(1, "left"), touchdown(2), touchdown(3)];
    expect(landingsOfTrial(makeTrial({ test: "repeatedHops", events: contacts }))).toBe(3);
  });

  test("are those of practice jumps, excluded and refused ones too, for two legs and each leg", () => {
    const trials = [
      ...makeTrials(2, { test: "countermovementJump", limb: "both" }),
      makeTrial({ test: "countermovementJump", limb: "both", practice: true }),
      makeTrial({ test: "dropJump", limb: "left", excluded: { reason: "stumbled" } }),
      makeTrial({ test: "dropJump", limb: "right", status: "refused" }),
      makeTrial({ test: "countermovementJump", limb: "right", practice: true }),
    ];
    expect(landingsOf(trials)).toEqual({ twoLeg: 3, left: 2, right: 3, uncounted: 0 });
  });

  test("are none where a recording holds no attempt, and uncounted where nobody knows how many there were", () => {
    const { span: _span, ...nothing } = makeTrial({ status: "refused" });
    const { test: _test, ...unnamed } = makeTrial({ status: "refused" });
    const { limb: _limb, ...unsided } = makeTrial({ status: "refused" });
    const hops = makeTrial({ test: "repeatedHops", status: "refused" });
    expect(landingsOf([nothing, unnamed, unsided, hops])).toEqual({ twoLeg: 0, left: 0, right: 0, uncounted: 3 });
  });

  test("are taken from what the trace looks like while nobody has said what it is", () => {
    const { test: _test, ...unnamed } = makeTrial({ status: "refused", limb: "both" });
    const offered: TrialResult = {
      ...unnamed,
      recognised: { test: "dropJump", trace: { seen: "impact", before: "empty plate" } },
    };
    expect(landingsOf([offered]).twoLeg).toBe(2);
  });

  test("leave what the protocol allows on these legs, and no limit where the protocol has none", () => {
    const running = shippedProtocol("return-to-running")!;
    const trials = makeTrials(12, { test: "countermovementJump", limb: "both" });
    expect(landingsLeft(running, "both", trials)).toBe(8);
    expect(landingsLeft(running, "left", trials)).toBe(0);
    const { landingsADay: _limit, ...before } = running;
    expect(landingsLeft(before, "both", trials)).toBeUndefined();
  });
});
