import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { InvolvedSide, Side } from "../../../core/ground/limb.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import type { ComparableTrial } from "../../../core/sides/comparable-trial.ts";
import { compareSides } from "../../../core/sides/compare-sides.ts";
import type { Comparison } from "../../../core/sides/comparison.ts";
import { makeMeasure, singleLegTrial, twoLegTrial } from "./make-trials.ts";

/** Rounding of a few operations. */
const digits = 9;

function compared(
  involved: InvolvedSide,
  trials: readonly ComparableTrial[],
  measure: string,
  settings = defaultSettings,
): Comparison {
  const found = compareSides({ involved, trials }, settings).find((each) => each.measure === measure);
  if (found === undefined) throw new Error(`no comparison of ${measure}`);
  return found;
}

const heights = { right: [0.12, 0.126, 0.123, 0.127], left: [0.135, 0.141, 0.138, 0.142] };
const singles = (["right", "left"] as const).flatMap((side) => heights[side].map((h) => singleLegTrial(side, h)));

describe("comparing single-leg trials", () => {
  it("puts the involved side over the uninvolved, means over the trials", () => {
    const made = compared("right", singles, "jumpHeightImpulse");
    expect(made.first).toEqual({ side: "right", values: heights.right, mean: expect.closeTo(0.124, digits) });
    expect(made.second.mean).toBeCloseTo(0.139, digits);
    // By hand: 100 × 0.124 / 0.139.
    expect(made.index).toBeCloseTo(89.2086330935, digits);
    expect(made).toMatchObject({ basis: "involved-uninvolved", role: "criterion", legs: "single", weaker: "" });
    expect(made.plates).toBeUndefined();
  });

  it("gives the status confidence first and the drawn one second, by Fieller with Welch–Satterthwaite", () => {
    const made = compared("right", singles, "jumpHeightImpulse");
    expect(made.intervals.map((each) => each.confidence)).toEqual([0.8, 0.95]);
    // NumPy 2.4.6 and SciPy 1.17.1 on the quadratic (NIST) form of CHECKS I1 with df 5.92343 at the estimate.
    const [status, drawn] = made.intervals;
    expect(status?.low).toBeCloseTo(87.0340304, 6);
    expect(status?.high).toBeCloseTo(91.4312555, 6);
    expect(drawn?.low).toBeCloseTo(85.534444, 6);
    expect(drawn?.high).toBeCloseTo(93.0220248, 6);
    expect(made.intervalFrom).toBe("independent trials");
    expect(made.intervalNote).toContain("4 right and 4 left trials");
  });

  it("leaves out excluded trials and trials without the measure", () => {
    const withOthers = [
      ...singles,
      singleLegTrial("right", 0.3, { excluded: true }),
      singleLegTrial("left", 0.3, { measures: [makeMeasure("bodyWeight", "left", 690)] }),
    ];
    expect(compared("right", withOthers, "jumpHeightImpulse")).toEqual(compared("right", singles, "jumpHeightImpulse"));
  });

  it("never takes a two-leg trial's value for a single-leg one", () => {
    const both = twoLegTrial(0.3, 0.3, {}, "peakLandingForce");
    const made = compareSides({ involved: "right", trials: [both, ...singles] }, defaultSettings);
    expect(made.filter((each) => each.measure === "peakLandingForce").map((each) => each.legs)).toEqual(["both"]);
  });

  it("compares times as a difference only", () => {
    const trials = [0.9, 0.94].map((time) =>
      singleLegTrial("right", 0.1, { measures: [makeMeasure("timeToTakeoff", "right", time)] }),
    );
    const other = singleLegTrial("left", 0.1, { measures: [makeMeasure("timeToTakeoff", "left", 0.82)] });
    const made = compared("right", [...trials, other], "timeToTakeoff");
    expect(made.index).toBeUndefined();
    expect(made.intervals).toEqual([]);
    // By hand: (0.90 + 0.94)/2 − 0.82.
    expect(made.difference).toBeCloseTo(0.1, digits);
    expect(made.role).toBe("information");
  });

  it("says which side has no trial instead of comparing with nothing", () => {
    const made = compared("right", singles.slice(0, 4), "jumpHeightImpulse");
    expect(made.second).toEqual({ side: "left", values: [] });
    expect(made.index).toBeUndefined();
    expect(made.intervalNote).toBe("No trial of the left side that counts has this measure.");
  });
});

describe("comparing within two-leg trials", () => {
  const trials = [twoLegTrial(150, 140), twoLegTrial(160, 150), twoLegTrial(155, 147)];

  it("pairs both limbs within each trial", () => {
    const made = compared("right", trials, "brakingImpulse");
    // By hand: 100 × (437/3) / (465/3).
    expect(made.index).toBeCloseTo((100 * 437) / 465, digits);
    expect(made.intervalFrom).toBe("paired trials");
    expect(made.plates).toBe("proved");
    // NumPy 2.4.6 and SciPy 1.17.1, quadratic form of CHECKS I1 with covariance and two degrees of freedom.
    expect(made.intervals[0]?.low).toBeCloseTo(93.1323753, 6);
    expect(made.intervals[0]?.high).toBeCloseTo(94.8097432, 6);
  });

  it("uses only trials with the measure on both sides, so that pairs stay pairs", () => {
    const lone = twoLegTrial(1, 1, { measures: [makeMeasure("brakingImpulse", "left", 900)] });
    expect(compared("right", [lone, ...trials], "brakingImpulse").first.values).toEqual([140, 150, 147]);
  });

  it("carries the weakest proof of the plates of the trials it used", () => {
    const unproved = twoLegTrial(150, 140, { feet: "unproved" });
    const contradicted = twoLegTrial(150, 140, { feet: "contradicted" });
    expect(compared("right", [...trials, unproved], "brakingImpulse").plates).toBe("unproved");
    expect(compared("right", [...trials, unproved, contradicted], "brakingImpulse").plates).toBe("contradicted");
    const left = { ...unproved, excluded: true };
    expect(compared("right", [...trials, left], "brakingImpulse").plates).toBe("proved");
  });

  it("gives impulses per body mass where every trial has that form", () => {
    const perMass = trials.map((trial, at) => ({
      ...trial,
      measures: [
        ...trial.measures,
        makeMeasure("brakingImpulsePerBodyMass", "left", 2 + at),
        makeMeasure("brakingImpulsePerBodyMass", "right", 1 + at),
      ],
    }));
    const made = compared("right", perMass, "brakingImpulse");
    expect(made.first.meanPerBodyMass).toBeCloseTo(2, digits);
    expect(made.second.meanPerBodyMass).toBeCloseTo(3, digits);
    expect(compared("right", [...perMass, twoLegTrial(1, 1)], "brakingImpulse").first.meanPerBodyMass).toBeUndefined();
  });

  it("informs about landing and net limb impulses without letting them near a criterion", () => {
    for (const id of [
      "peakLandingForce",
      "landingImpulse",
      "brakingLimbNetImpulse",
      "propulsionLimbNetImpulse",
    ] as const) {
      expect(compared("left", [twoLegTrial(100, 90, {}, id)], id).role).toBe("information");
    }
  });

  it("makes no index of a net impulse that is not above zero", () => {
    const made = compared("left", [twoLegTrial(-4, 10, {}, "brakingLimbNetImpulse")], "brakingLimbNetImpulse");
    expect(made.index).toBeUndefined();
    expect(made.intervalNote).toContain("not above zero");
  });
});

describe("one trial a side", () => {
  it("has an interval of measurement uncertainty only, and says so", () => {
    const trials = (["left", "right"] as const).map((side) =>
      singleLegTrial(side, 0.1, { measures: [makeMeasure("jumpHeightImpulse", side, 0.1, 0.002)] }),
    );
    const made = compared("left", trials, "jumpHeightImpulse");
    expect(made.intervalFrom).toBe("measurement uncertainty");
    expect(made.intervalNote).toBe(
      "One trial a side: the interval holds measurement uncertainty only, not the spread between trials.",
    );
    // By hand, ratio 1, relative uncertainty 2 %: z·√2·2 % to first order is 3.62 % at 80 %, 5.54 % at 95 %.
    const width = made.intervals.map((each) => (each.high - each.low) / 2);
    expect(width[0]).toBeCloseTo(3.62, 1);
    expect(width[1]).toBeCloseTo(5.56, 1);
  });

  it("has no interval where the measurement uncertainty is unknown", () => {
    const made = compared("left", [singleLegTrial("left", 0.1), singleLegTrial("right", 0.11)], "jumpHeightImpulse");
    expect(made.intervals).toEqual([]);
    expect(made.intervalFrom).toBeUndefined();
    expect(made.intervalNote).toContain("no measurement uncertainty known");
  });
});

describe("whose side it is", () => {
  it("names the weaker side in words where nobody is injured, and whether that is open", () => {
    const made = compared("none", singles, "jumpHeightImpulse");
    expect(made.basis).toBe("left-right");
    expect(made.first.side).toBe("left");
    expect(made.weaker).toBe("The right side is the weaker one, at 89 % of the left.");
    const close = [0.1, 0.14].flatMap((h) => [singleLegTrial("left", h), singleLegTrial("right", h * 1.001)]);
    expect(compared("none", close, "jumpHeightImpulse").weaker).toBe(
      "The left side is the weaker one, at 99.9 % of the right, but the 95 % interval includes 100 %.",
    );
  });

  it("gives values only where both knees are involved", () => {
    const made = compared("both", singles, "jumpHeightImpulse");
    expect(made.basis).toBe("values-only");
    expect(made.index).toBeUndefined();
    expect(made.first.mean).toBeCloseTo(0.139, digits);
    expect(made.weaker).toBe("");
  });
});

describe("the trial statistic", () => {
  it("may be the median or the best trial", () => {
    const median = compared("right", singles, "jumpHeightImpulse", settingsWith({ trialStatistic: "median" }));
    expect(median.first.mean).toBeCloseTo(0.1245, digits);
    const best = compared("right", singles, "jumpHeightImpulse", settingsWith({ trialStatistic: "best" }));
    expect(best.first.mean).toBe(0.127);
    expect(best.second.mean).toBe(0.142);
    expect(best.intervalNote).toContain("best trial");
  });

  it("takes both limbs of the best two-leg trial from that one trial", () => {
    const trials = [twoLegTrial(150, 160), twoLegTrial(170, 155), twoLegTrial(140, 165)];
    const made = compared("right", trials, "brakingImpulse", settingsWith({ trialStatistic: "best" }));
    expect([made.first.mean, made.second.mean]).toEqual([155, 170]);
  });

  it("is the mean for landings whatever the setting: the hardest landing is not the best", () => {
    const trials = [twoLegTrial(900, 800, {}, "peakLandingForce"), twoLegTrial(1000, 900, {}, "peakLandingForce")];
    const made = compared("left", trials, "peakLandingForce", settingsWith({ trialStatistic: "best" }));
    expect(made.first.mean).toBe(950);
    expect(made.intervalNote).toContain("The mean stands for the trials");
  });

  it("widens the interval of median and best over that of the mean", () => {
    const width = (trialStatistic: string) => {
      const [status] = compared("right", singles, "jumpHeightImpulse", settingsWith({ trialStatistic })).intervals;
      return (status?.high ?? Number.NaN) - (status?.low ?? Number.NaN);
    };
    expect(width("median")).toBeGreaterThan(width("mean"));
    expect(width("best")).toBeGreaterThan(width("median"));
  });
});

describe("any trials", () => {
  const height = fc.double({ min: 0.05, max: 0.4, noNaN: true });
  const side: fc.Arbitrary<Side> = fc.constantFrom("left", "right");
  const trials = fc.array(
    fc.tuple(side, height).map(([limb, value]) => singleLegTrial(limb, value)),
    { minLength: 1, maxLength: 12 },
  );

  it("give an index that inverts with the involved side and lies in its intervals", () => {
    fc.assert(
      fc.property(trials, (made) => {
        const right = compared("right", made, "jumpHeightImpulse");
        const left = compared("left", made, "jumpHeightImpulse");
        expect(right.first).toEqual(left.second);
        if (right.index === undefined || left.index === undefined) return;
        expect(right.index * left.index).toBeCloseTo(10000, 6);
        for (const each of right.intervals) {
          expect(each.low).toBeLessThanOrEqual(right.index);
          expect(each.high).toBeGreaterThanOrEqual(right.index);
        }
      }),
    );
  });
});
