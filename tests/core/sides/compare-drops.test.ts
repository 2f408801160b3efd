import { describe, expect, it } from "vitest";
import type { InvolvedSide } from "../../../core/ground/limb.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import type { ComparableTrial } from "../../../core/sides/comparable-trial.ts";
import { compareSides } from "../../../core/sides/compare-sides.ts";
import type { Comparison } from "../../../core/sides/comparison.ts";
import { makeMeasure, singleLegDropJump, singleLegTrial, twoLegDropJump, twoLegTrial } from "./make-trials.ts";

/** Rounding of a few operations. */
const digits = 9;

function all(trials: readonly ComparableTrial[], involved: InvolvedSide = "right", settings = defaultSettings) {
  return compareSides({ involved, trials }, settings);
}

function only(comparisons: readonly Comparison[], measure: string): Comparison {
  const found = comparisons.filter((each) => each.measure === measure);
  if (found.length !== 1 || found[0] === undefined) throw new Error(`${found.length} comparisons of ${measure}`);
  return found[0];
}

const led = [
  twoLegDropJump("left", 168, 150),
  twoLegDropJump("left", 175, 158),
  twoLegDropJump("right", 166, 161),
  twoLegDropJump("right", 158, 149),
  twoLegDropJump("right", 160, 154),
];

describe("two-leg drop jumps", () => {
  it("average both leads first, so that the leg that led more often does not count more", () => {
    const made = only(all(led), "brakingImpulse");
    // By hand: right (154 + 464/3)/2, left (171.5 + 484/3)/2; as one sample it would be 772/827 = 93.35 %.
    expect(made.first.mean).toBeCloseTo((154 + 464 / 3) / 2, digits);
    expect(made.second.mean).toBeCloseTo((171.5 + 484 / 3) / 2, digits);
    // Interval as in lead-averaged-moments.test.ts (NumPy 2.4.6, SciPy 1.17.1).
    expect(made.index).toBeCloseTo(92.73910866299451, digits);
    expect(made.intervals[0]?.low).toBeCloseTo(91.82095316974682, 8);
    expect(made).toMatchObject({ dropHeightMetres: 0.3, intervalFrom: "paired trials", plates: "proved" });
    expect(made.leads).toEqual(["left", "left", "right", "right", "right"]);
    expect(made.intervalNote).toBe(
      "Interval of a ratio after Fieller, paired within two-leg trials and averaged over 2 with the left and 3 with the right leg leading; spread pooled within each lead, 3 degrees of freedom.",
    );
  });

  it("are not comparable while one leg always led, and the values stand all the same", () => {
    const made = only(all(led.slice(0, 2)), "brakingImpulse");
    expect(made.index).toBeUndefined();
    expect(made.intervals).toEqual([]);
    expect(made.first.mean).toBeCloseTo(154, digits);
    expect(made.notComparable).toBe(
      "Not comparable: in all 2 trials the left leg led off the box, which shifts the index; trials with the right leg leading are missing.",
    );
    expect(made.intervalNote).toBe(made.notComparable);
  });

  it("are not comparable while nobody stated which leg led", () => {
    const made = only(
      all([twoLegDropJump(undefined, 168, 150), twoLegDropJump(undefined, 166, 161)]),
      "brakingImpulse",
    );
    expect(made.index).toBeUndefined();
    expect(made.notComparable).toContain("which leg led off the box is not stated");
  });

  it("leave out the trials nobody stated the lead of, and say so", () => {
    const made = only(all([...led, twoLegDropJump(undefined, 500, 100)]), "brakingImpulse");
    expect(made.index).toBeCloseTo(92.73910866299451, digits);
    expect(made.first.values).toHaveLength(5);
    expect(made.intervalNote).toContain("1 trial without a stated leading leg left out.");
  });

  it("with one trial a lead have an interval of measurement uncertainty alone", () => {
    const trial = (lead: "left" | "right", left: number, right: number) =>
      twoLegDropJump(lead, 0, 0, {
        measures: [makeMeasure("brakingImpulse", "left", left, 2), makeMeasure("brakingImpulse", "right", right, 2)],
      });
    const made = only(all([trial("left", 168, 150), trial("right", 166, 161)]), "brakingImpulse");
    // By hand: 100 × (150 + 161)/(168 + 166).
    expect(made.index).toBeCloseTo((100 * 311) / 334, digits);
    expect(made.intervalFrom).toBe("measurement uncertainty");
    expect(made.intervalNote).toContain("One trial with each leg leading");
  });

  it("take the median or the best trial within each lead before they average", () => {
    const median = only(all(led, "right", settingsWith({ trialStatistic: "median" })), "brakingImpulse");
    // By hand: right medians 154 and 154, left medians 171.5 and 160.
    expect([median.first.mean, median.second.mean]).toEqual([154, 165.75]);
    const best = only(all(led, "right", settingsWith({ trialStatistic: "best" })), "brakingImpulse");
    // By hand: the largest sums are the second (158, 175) and the third trial (161, 166).
    expect([best.first.mean, best.second.mean]).toEqual([159.5, 170.5]);
  });

  it("show the mean of the leads where both knees are involved, without an index", () => {
    const made = only(all(led, "both"), "brakingImpulse");
    expect(made.second.mean).toBeCloseTo((154 + 464 / 3) / 2, digits);
    expect(made.index).toBeUndefined();
  });

  it("compare braking and propulsion impulse for a criterion, landings for information", () => {
    const roles = (["brakingImpulse", "propulsionImpulse", "peakLandingForce", "landingImpulse"] as const).map(
      (id) => only(all([twoLegDropJump("left", 168, 150, {}, id)]), id).role,
    );
    expect(roles).toEqual(["criterion", "criterion", "information", "information"]);
  });
});

describe("box heights", () => {
  const heights = (right: number, left: number, dropHeightMetres: number) => [
    singleLegDropJump("right", { jumpHeightFlightTime: right }, { dropHeightMetres }),
    singleLegDropJump("left", { jumpHeightFlightTime: left }, { dropHeightMetres }),
  ];

  it("are compared each on its own, the lower first", () => {
    const made = all([...heights(0.12, 0.16, 0.3), ...heights(0.1, 0.13, 0.2)]);
    expect(made.map((each) => each.dropHeightMetres)).toEqual([0.2, 0.3]);
    // By hand: 100 × 0.10/0.13 and 100 × 0.12/0.16.
    expect(made[0]?.index).toBeCloseTo(76.9230769231, digits);
    expect(made[1]?.index).toBeCloseTo(75, digits);
  });

  it("are never mixed, even where one leg would have no trial then", () => {
    const [low, high] = [heights(0.1, 0.13, 0.2)[0]!, heights(0.12, 0.16, 0.3)[1]!];
    const made = all([low, high]);
    expect(made.map((each) => each.index)).toEqual([undefined, undefined]);
    expect(made[0]?.intervalNote).toBe(
      "No trial of the left side from 0.20\u00a0m that counts has this measure. Trials from 0.30\u00a0m stay apart: box heights are never mixed.",
    );
  });

  it("that nobody stated are a group of their own", () => {
    const { dropHeightMetres: _unstated, ...unstated } = heights(0.12, 0.16, 0.3)[0]!;
    const made = all([unstated, ...heights(0.1, 0.13, 0.2)]);
    expect(made.map((each) => each.dropHeightMetres)).toEqual([0.2, undefined]);
  });

  it("mean nothing to a test from standing", () => {
    const trials = [
      singleLegTrial("right", 0.12, { dropHeightMetres: 0.2 }),
      singleLegTrial("left", 0.15, { dropHeightMetres: 0.3 }),
    ];
    const made = only(all(trials), "jumpHeightImpulse");
    expect(made.dropHeightMetres).toBeUndefined();
    // By hand: 100 × 0.12/0.15.
    expect(made.index).toBeCloseTo(80, digits);
  });
});

describe("single-leg drop jumps", () => {
  const jump = (limb: "left" | "right", height: number, contactTime: number, dropHeightEffective: number) =>
    singleLegDropJump(limb, {
      jumpHeightFlightTime: height,
      contactTime,
      reactiveStrengthIndex: height / contactTime,
      dropHeightEffective,
      peakLandingForce: 1500,
    });

  it("compare height and reactive strength index for a criterion, the landing for information, contact as a difference", () => {
    const made = all([jump("right", 0.12, 0.36, 0.17), jump("left", 0.132, 0.33, 0.172)]);
    // By hand: 0.12/0.132, (0.12/0.36)/(0.132/0.33), 0.36 − 0.33.
    expect(only(made, "jumpHeightFlightTime").index).toBeCloseTo(90.9090909091, digits);
    expect(only(made, "reactiveStrengthIndex").index).toBeCloseTo(83.3333333333, digits);
    expect(only(made, "contactTime").difference).toBeCloseTo(0.03, digits);
    expect(made.filter((each) => each.role === "criterion").map((each) => each.measure)).toEqual([
      "jumpHeightFlightTime",
      "reactiveStrengthIndex",
    ]);
    expect(only(made, "peakLandingForce").role).toBe("information");
  });

  it("are not comparable where the legs fell from different heights, and say how different", () => {
    const made = all([jump("right", 0.12, 0.36, 0.15), jump("left", 0.132, 0.33, 0.18)]);
    for (const each of made) {
      expect(each.index).toBeUndefined();
      expect(each.difference).toBeUndefined();
      // By hand: 1 − 0.15/0.18 = 17 %.
      expect(each.notComparable).toBe(
        "Not comparable: the left leg fell from 0.180\u00a0m and the right from 0.150\u00a0m, the right from 17\u00a0% less.",
      );
    }
    expect(made).toHaveLength(4);
  });

  it("of one leg alone say that the other is missing, whatever it fell from", () => {
    const made = all([jump("right", 0.12, 0.36, 0.15)]);
    expect(only(made, "reactiveStrengthIndex").intervalNote).toBe(
      "No trial of the left side from 0.20\u00a0m that counts has this measure.",
    );
  });
});

describe("the other tests", () => {
  it("compare repeated hops between the legs by the index of the best five", () => {
    const hops = (limb: "left" | "right", value: number) =>
      singleLegTrial(limb, 0, {
        test: "repeatedHops",
        measures: [makeMeasure("reactiveStrengthIndexBestFive", limb, value)],
      });
    const made = only(all([hops("right", 0.45), hops("left", 0.5)]), "reactiveStrengthIndexBestFive");
    // By hand: 100 × 0.45/0.5.
    expect(made.index).toBeCloseTo(90, digits);
    expect(made.role).toBe("criterion");
  });

  it("compare squat jumps by height between legs and by propulsion within jumps", () => {
    const made = all([
      singleLegTrial("right", 0.12, { test: "squatJump" }),
      singleLegTrial("left", 0.15, { test: "squatJump" }),
      twoLegTrial(100, 90, { test: "squatJump" }, "propulsionImpulse"),
    ]);
    expect(made.map(({ measure, legs, role }) => [measure, legs, role])).toEqual([
      ["propulsionImpulse", "both", "criterion"],
      ["jumpHeightImpulse", "single", "criterion"],
    ]);
  });

  it("let drop landings inform only", () => {
    const landing = (limb: "left" | "right") =>
      singleLegDropJump(limb, { peakLandingForce: 1500, dropHeightEffective: 0.2 }, { test: "dropLanding" });
    const made = all([
      landing("left"),
      landing("right"),
      twoLegDropJump("left", 1400, 1500, { test: "dropLanding" }, "peakLandingForce"),
    ]);
    expect(made.map((each) => each.role)).toEqual(["information", "information"]);
    expect(made.find((each) => each.legs === "both")?.notComparable).toContain("the left leg led");
  });
});
