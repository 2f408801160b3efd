import { describe, expect, test } from "vitest";
import type { SessionResult } from "../../../core/result/session-result.ts";
import { analyzeSimulated, type PlateGainOfEach, simulateSession } from "../../bench/weight/simulated-session.ts";
import { told } from "../../told.ts";

const athlete = {
  seed: 7001,
  massKg: 71.3,
  heights: { left: 0.152, right: 0.141 },
  dropHeights: { left: 0.135, right: 0.126 },
  trials: 4,
  twoLegTrials: 3,
} as const;

const cached = new Map<string, SessionResult>();
function session(gains: PlateGainOfEach): SessionResult {
  const key = JSON.stringify(gains);
  const result = cached.get(key) ?? analyzeSimulated(simulateSession(athlete, gains)).result;
  cached.set(key, result);
  return result;
}
const plain = session({ left: 1, right: 1 });

const scaled: readonly PlateGainOfEach[] = [
  { left: 1, right: 0.99 },
  { left: 1, right: 1.002 },
  { left: 1, right: 1.01 },
  { left: 1.01, right: 1 },
];

/** Height and reactive strength index of single legs, their statuses by measure and test. */
function singleLegStatuses({ criteria }: SessionResult): readonly string[] {
  return criteria
    .filter(({ criterion }) => criterion.legs === "single")
    .map(({ criterion, status }) => `${criterion.test} ${criterion.measure}: ${status}`);
}

describe("either plate scaled by 0.99 to 1.01", () => {
  test.each(scaled)("(%j) changes no status of single-leg height or reactive strength index", (gains) => {
    expect(singleLegStatuses(plain).length).toBeGreaterThan(3);
    expect(singleLegStatuses(session(gains))).toEqual(singleLegStatuses(plain));
  });

  test.each(scaled)("(%j) moves each single-leg height by less than its uncertainty", (gains) => {
    const heights = ({ trials }: SessionResult) =>
      trials
        .filter(({ limb }) => limb !== "both")
        .flatMap(({ measures }) => measures.filter(({ id }) => id === "jumpHeightImpulse"));
    const before = heights(plain);
    const after = heights(session(gains));
    expect(before.length).toBe(16);
    for (const [index, { value, uncertainty = 0 }] of before.entries()) {
      expect(Math.abs((after[index]?.value ?? 0) - value)).toBeLessThan(uncertainty);
    }
  });

  test.each(scaled)("(%j) moves two-leg indices within intervals that hold it", (gains) => {
    const indices = ({ comparisons }: SessionResult) =>
      comparisons.filter(({ legs, index }) => legs === "both" && index !== undefined);
    const truths = indices(plain);
    expect(truths.length).toBeGreaterThan(3);
    for (const [at, { index, intervals }] of indices(session(gains)).entries()) {
      const drawn = intervals.find(({ confidence }) => confidence === 0.95);
      expect(index).not.toBe(truths[at]!.index);
      expect(drawn!.low).toBeLessThan(truths[at]!.index!);
      expect(drawn!.high).toBeGreaterThan(truths[at]!.index!);
    }
  });
});

describe("plates that disagree", () => {
  const said = (gains: PlateGainOfEach) => session(gains).findings.find(({ code }) => code === "plates-disagree");

  test("are found from 0.3 % on, with which reads more and what it moves; not below", () => {
    const codes = ({ findings }: SessionResult) => findings.map(({ code }) => code);
    expect(codes(plain)).not.toContain("plates-disagree");
    expect(codes(session({ left: 1, right: 1.002 }))).not.toContain("plates-disagree");
    // Half a per mille beyond the limit, as the standing itself is uncertain by that much.
    const found = told(said({ left: 1, right: 1.0036 }))?.message ?? "";
    expect(found).toMatch(
      /^Plate right reads 0\.3\d % ± 0\.0\d % more than plate left, by the standing in \d+ trials\./,
    );
    expect(found).toContain("Impulse in braking, gross, two-leg countermovement jump");
    expect(told(said({ left: 1.01, right: 1 }))?.message).toMatch(/^Plate left reads (0\.9|1\.0)\d % ± 0\.0\d % more/);
  });

  test("more than 1 % apart give no symmetry of forces a status, and heights theirs all the same", () => {
    const braking = ({ criteria }: SessionResult) =>
      criteria.find(
        ({ criterion }) => criterion.measure === "brakingImpulse" && criterion.test === "countermovementJump",
      );
    expect(braking(session({ left: 1, right: 1.015 }))?.status).toBe("not-measured");
    expect(braking(session({ left: 1, right: 1.015 }))?.reason).toContain(
      "% apart: no symmetry of forces has a status",
    );
    expect(braking(plain)?.status).not.toBe("not-measured");
    expect(singleLegStatuses(session({ left: 1, right: 1.015 }))).toEqual(singleLegStatuses(plain));
  });
});
