import { describe, expect, it } from "vitest";
import type { CriteriaInput } from "../../../core/criteria/criteria-input.ts";
import type { CriterionResult } from "../../../core/criteria/criterion.ts";
import { evaluateCriteria } from "../../../core/criteria/evaluate-criteria.ts";
import { returnToPivotingSport } from "../../../core/criteria/return-to-pivoting-sport.ts";
import type { InvolvedSide, Side } from "../../../core/ground/limb.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import type { ComparableTrial } from "../../../core/sides/comparable-trial.ts";
import { compareSides } from "../../../core/sides/compare-sides.ts";
import { english } from "../../../core/words/english.ts";
import { openGate, stoppedGate } from "../gate/gates.ts";
import { makeMeasure, singleLegDropJump, twoLegDropJump } from "../sides/make-trials.ts";

function evaluate(
  id: string,
  trials: readonly ComparableTrial[],
  changes: Partial<Omit<CriteriaInput, "trials" | "comparisons">> = {},
  settings = defaultSettings,
): CriterionResult {
  const involved: InvolvedSide = changes.involved ?? "right";
  const comparisons = compareSides({ involved, trials }, settings);
  const found = evaluateCriteria(
    returnToPivotingSport,
    { involved, references: [], gate: openGate, ...changes, trials, comparisons },
    settings,
  ).find((each) => each.criterion.id === id);
  if (found === undefined) throw new Error(`no criterion ${id}`);
  return found;
}

const twoLegs = "drop-jump-reactive-strength-index";
const oneLeg = "single-leg-drop-jump-reactive-strength-index";
const heightSymmetry = "single-leg-drop-jump-height-symmetry";
const braking = "drop-jump-braking-impulse-symmetry";

const indices = (values: readonly number[], changes: Partial<ComparableTrial> = {}) =>
  values.map((value) =>
    twoLegDropJump("left", 0, 0, { measures: [makeMeasure("reactiveStrengthIndex", "both", value)], ...changes }),
  );

const legIndices = (limb: Side, values: readonly number[], changes: Partial<ComparableTrial> = {}) =>
  values.map((value) => singleLegDropJump(limb, { reactiveStrengthIndex: value }, changes));

describe("a value that must be reached by both legs together", () => {
  it("is met where the whole t interval of the mean reaches it", () => {
    const result = evaluate(twoLegs, indices([1.4, 1.44, 1.38, 1.42]));
    expect(result.status).toBe("met");
    // By hand: mean 1.41. scipy.stats.t.ppf(0.9, 3)·SD/√4 with SciPy 1.17.1: SD 0.0258199, half-width 0.0211427.
    expect(result.estimate).toBeCloseTo(1.41, 9);
    expect(result.interval?.low).toBeCloseTo(1.41 - 0.0211427, 6);
    expect(result.interval?.high).toBeCloseTo(1.41 + 0.0211427, 6);
    expect(result.reason).toBe(
      "The reactive strength index is 1.41\u00a0m/s; its whole 80\u00a0% interval, 1.39 to 1.43\u00a0m/s, is at or above 1.3\u00a0m/s.",
    );
    expect(english.statuses.threshold(result.criterion)).toBe("at least 1.3\u00a0m/s");
  });

  it("is not met where the whole interval is below", () => {
    const result = evaluate(twoLegs, indices([0.82, 0.84, 0.83, 0.83]));
    expect(english.statuses.words(result)).toBe("not met");
    expect(result.reason).toContain("is below 1.3\u00a0m/s.");
  });

  it("is too close to call where the interval holds it, in figures that do not read across it", () => {
    // By hand: mean 1.298, which two decimals would turn into the threshold.
    const result = evaluate(twoLegs, indices([1.25, 1.31, 1.28, 1.352]));
    expect(english.statuses.words(result)).toBe("too close to call (1.298\u00a0m/s, leaning not met)");
    expect(result.moreTrials).toBe("More trials today cannot settle this.");
  });

  it("belongs to its box height: other boxes do not count, and that is said", () => {
    const higher = indices([1.4, 1.44, 1.38, 1.42], { dropHeightMetres: 0.4 });
    expect(evaluate(twoLegs, higher)).toMatchObject({
      status: "not-measured",
      reason:
        "No two-leg drop jump from 0.30\u00a0m that counts has this measure. Trials from 0.40\u00a0m do not count: a criterion belongs to its box height.",
    });
    const mixed = [...higher, ...indices([0.82, 0.84, 0.83, 0.83])];
    expect(evaluate(twoLegs, mixed).estimate).toBeCloseTo(0.83, 9);
  });

  it("does not count trials from a box nobody stated", () => {
    const unstated = indices([1.4, 1.44, 1.38]).map(({ dropHeightMetres: _box, ...trial }) => trial);
    expect(evaluate(twoLegs, unstated).reason).toBe(
      "No two-leg drop jump from 0.30\u00a0m that counts has this measure. Trials whose box height is not stated do not count: a criterion belongs to its box height.",
    );
  });

  it("needs no plates of its own, no lead, and enough trials that are not excluded", () => {
    const unproved = indices([1.4, 1.44, 1.38, 1.42], { feet: "unproved" });
    expect(evaluate(twoLegs, unproved).status).toBe("met");
    const few = [...indices([1.4, 1.44]), ...indices([1.38, 1.42], { excluded: true })];
    expect(evaluate(twoLegs, few)).toMatchObject({
      status: "not-measured",
      reason: "Too few trials: 2 of 3 two-leg trials.",
    });
  });

  it("is judged with both knees involved too, and not with nobody injured", () => {
    expect(evaluate(twoLegs, indices([1.4, 1.44, 1.38, 1.42]), { involved: "both" }).status).toBe("met");
    expect(evaluate(twoLegs, indices([1.4, 1.44, 1.38, 1.42]), { involved: "none" }).status).toBe("not-applicable");
  });

  it("is withheld while the gate is closed", () => {
    const gate = stoppedGate("pain 5 of 10");
    expect(evaluate(twoLegs, indices([1.4, 1.44, 1.38, 1.42]), { gate })).toMatchObject({
      status: "withheld-today",
      reason: "The session was stopped: pain 5 of 10.",
    });
  });

  it("has no interval from one trial and stays open", () => {
    const result = evaluate(twoLegs, indices([1.4]), {}, settingsWith({ minimumTrialsPerSide: 1 }));
    expect(result.status).toBe("too-close-to-call");
    expect(result.reason).toContain("From one trial no interval can be made.");
    expect(result.moreTrials).toContain("With one trial the spread is unknown");
  });

  it("suggests more trials where one or two on two legs would probably settle it", () => {
    // By hand: mean 1.275, SD 0.0387: half-width 0.0317 with four trials, 0.0266 with five, 0.0233 with six.
    const result = evaluate(twoLegs, indices([1.23, 1.26, 1.29, 1.32]));
    expect(result.status).toBe("too-close-to-call");
    expect(result.moreTrials).toBe("Two more trials on two legs would probably settle this.");
  });
});

describe("a value that must be reached by the involved leg", () => {
  const both = [...legIndices("right", [0.4, 0.42, 0.41, 0.41]), ...legIndices("left", [0.55, 0.56, 0.57, 0.56])];

  it("shows the other leg beside it, and that healthy legs can be lower", () => {
    const result = evaluate(oneLeg, both);
    expect(result.status).toBe("not-met");
    expect(result.reason).toMatch(/^The reactive strength index of the right leg is 0\.41\u00a0m\/s;/);
    expect(result.reason).toMatch(/is below 0\.5\u00a0m\/s\. The left leg: 0\.56\u00a0m\/s\.$/);
    expect(result.caution).toBe("Set for field-sport athletes; healthy legs can be lower.");
    expect(evaluate(oneLeg, both, { involved: "left" }).status).toBe("met");
  });

  it("needs no trial of the other leg", () => {
    const result = evaluate(oneLeg, legIndices("right", [0.52, 0.53, 0.52]));
    expect(result.status).toBe("met");
    expect(result.reason).toContain("The left leg has no value.");
  });

  it("counts the trials of its own leg", () => {
    expect(evaluate(oneLeg, [...legIndices("right", [0.52]), ...legIndices("left", [0.5, 0.5, 0.5])]).reason).toBe(
      "Too few trials: right 1 of 3.",
    );
  });

  it("is asked of either leg where both knees are involved, and the weaker decides", () => {
    const result = evaluate(oneLeg, both, { involved: "both" });
    expect(result.status).toBe("not-met");
    expect(result.estimate).toBeCloseTo(0.41, 9);
    expect(result.reason).toContain("of the left leg is 0.56\u00a0m/s");
    const high = [...legIndices("right", [0.6, 0.61, 0.6]), ...legIndices("left", [0.55, 0.56, 0.57])];
    expect(evaluate(oneLeg, high, { involved: "both" }).status).toBe("met");
    expect(evaluate(oneLeg, both.slice(0, 4), { involved: "both" }).reason).toBe("Too few trials: left 0 of 3.");
  });
});

describe("symmetry of drop jumps", () => {
  const jumps = (limb: Side, values: readonly number[], dropHeightMetres = 0.2, effective = 0.17) =>
    values.map((value) =>
      singleLegDropJump(limb, { jumpHeightFlightTime: value, dropHeightEffective: effective }, { dropHeightMetres }),
    );
  const single = [...jumps("right", [0.129, 0.131, 0.13]), ...jumps("left", [0.138, 0.139, 0.137])];

  it("between single legs is by the height of flight, with the box said", () => {
    const result = evaluate(heightSymmetry, single);
    expect(result.status).toBe("met");
    // By hand: 100 × 0.13/0.138.
    expect(result.estimate).toBeCloseTo(94.2028985507, 9);
    expect(result.reason).toMatch(/ Box height 0\.20\u00a0m\.$/);
  });

  it("is read from the box with most trials of both legs, never from two", () => {
    const other = [...jumps("right", [0.05], 0.1), ...jumps("left", [0.14, 0.14, 0.14, 0.14], 0.1)];
    const result = evaluate(heightSymmetry, [...other, ...single]);
    expect(result.estimate).toBeCloseTo(94.2028985507, 9);
    expect(result.reason).toMatch(/ Box height 0\.20\u00a0m\. Trials from other boxes are not in it\.$/);
  });

  it("is not measured where the legs fell from different heights", () => {
    const uneven = [
      ...jumps("right", [0.129, 0.131, 0.13], 0.2, 0.15),
      ...jumps("left", [0.138, 0.139, 0.137], 0.2, 0.18),
    ];
    const result = evaluate(heightSymmetry, uneven);
    expect(result.status).toBe("not-measured");
    expect(result.reason).toContain("Not comparable: the left leg fell from 0.180\u00a0m");
    expect(result.estimate).toBeUndefined();
  });

  it("within two-leg jumps needs either leg leading", () => {
    const led = (lead: Side) => [twoLegDropJump(lead, 150, 146), twoLegDropJump(lead, 155, 150)];
    const oneSided = evaluate(braking, [...led("left"), ...led("left")]);
    expect(oneSided.status).toBe("not-measured");
    expect(oneSided.reason).toContain("trials with the right leg leading are missing");
    const balanced = evaluate(braking, [...led("left"), ...led("right")]);
    expect(balanced.status).toBe("met");
    expect(balanced.reason).toContain("Box height 0.30\u00a0m.");
    expect(evaluate(braking, []).reason).toBe("No two-leg drop jump on two plates that counts has this measure.");
  });

  it("holds a limb against an earlier value from the same box only", () => {
    const reference = (dropHeightMetres: number) => ({
      test: "dropJump" as const,
      legs: "single" as const,
      measure: "jumpHeightFlightTime",
      dropHeightMetres,
      side: "right" as const,
      value: 0.16,
      unit: "m" as const,
      date: "2025-08-20",
      origin: "pre-injury" as const,
    });
    // By hand: 0.13/0.16 = 81 %.
    expect(evaluate(heightSymmetry, single, { references: [reference(0.2)] }).caution).toContain(
      "the right limb is at 81\u00a0% of its pre-injury value",
    );
    expect(evaluate(heightSymmetry, single, { references: [reference(0.3)] }).caution).toBe("");
  });
});
