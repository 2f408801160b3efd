import { describe, expect, test } from "vitest";
import { accuracyConditions, goodCondition } from "../../bench/varied/conditions.ts";
import { drawVariedTrial } from "../../bench/varied/draw-trial.ts";
import { judgeTrial } from "../../bench/varied/judge-trial.ts";

// A small part of what tests/bench/varied-trials.ts counts over thousands; odd seeds, kept for claims. Truth comes from
// the simulator's closed forms. Causes were looked for among these very seeds too, so that this guards what was reached
// rather than estimates it: the share among seeds nobody has looked at is the bench's, with --first. From seed 400001 on,
// 300 trials each, silently wrong: 0 at 500 Hz, 1 with ringing, 8 of the good ones. Among seeds that were looked at, from
// 200001 and 300001 on: 0 and 1 at 500 Hz, 2 and 3 with ringing, those that are left in what follows from weight, from
// sway or from a touchdown. Before the uncertainties held ringing at touchdowns and beside peaks, from 200001 on: 1 at
// 1000 Hz, none at 200 Hz, with noise of 8 N and with hum; of 300 good ones 3, none refused or misread. Every test in
// turn, on two legs and on one, so a multiple of ten has each equally often.
const oddSeed = (index: number): number => 2 * index + 1;
const seeds = (first: number, count: number): number[] =>
  Array.from({ length: count }, (_, index) => oddSeed(first + index));

const sample = {
  good: 200,
  /** 1 % of 200. */
  goodFailuresAllowed: 2,
  eachCondition: 40,
  /** 0.5 % of 7 × 40 = 280, rounded down. */
  silentlyWrongAllowed: 1,
  /** Fewer compared measures a trial than this would mean that truths are missing. */
  leastComparedPerTrial: 30,
} as const;

describe(`of ${sample.good} varied good trials of every test`, () => {
  const judged = seeds(0, sample.good).map((seed) => ({ seed, ...judgeTrial(drawVariedTrial(seed, goodCondition)) }));

  test(`at most ${sample.goodFailuresAllowed} are refused`, () => {
    const refused = judged.filter((each) => each.outcome === "refused").map(({ seed, codes }) => ({ seed, codes }));
    expect(refused.length, JSON.stringify(refused)).toBeLessThanOrEqual(sample.goodFailuresAllowed);
  });

  test(`at most ${sample.goodFailuresAllowed} are read as another test or limb where nobody states them`, () => {
    const misread = judged.filter((each) => each.misread !== undefined).map(({ seed, misread: as }) => ({ seed, as }));
    expect(misread.length, JSON.stringify(misread)).toBeLessThanOrEqual(sample.goodFailuresAllowed);
  });
});

test(`at 1000, 500 and 200 Hz, with noise, hum, ringing and a mixture, ${sample.eachCondition} trials each, at most ${sample.silentlyWrongAllowed} is silently wrong`, () => {
  const judged = accuracyConditions.flatMap((condition, index) =>
    seeds(index * sample.eachCondition, sample.eachCondition).map((seed) => ({
      seed,
      condition: condition.name,
      ...judgeTrial(drawVariedTrial(seed, condition)),
    })),
  );
  const compared = judged.reduce((sum, each) => sum + each.compared, 0);
  expect(compared / judged.length).toBeGreaterThanOrEqual(sample.leastComparedPerTrial);
  const silent = judged.flatMap(({ seed, condition, wrong }) => {
    const unwarned = wrong.filter((each) => !each.warned);
    return unwarned.length === 0 ? [] : [{ seed, condition, unwarned }];
  });
  expect(silent.length, JSON.stringify(silent)).toBeLessThanOrEqual(sample.silentlyWrongAllowed);
});

test("a truth that is not the trial's own is seen as silently wrong, so the count above can fail", () => {
  const trial = drawVariedTrial(oddSeed(5), accuracyConditions[0]!);
  const truths = trial.truths.map((each) =>
    each.id === "takeoffVelocity" ? { ...each, value: 1.2 * each.value } : each,
  );
  const { wrong } = judgeTrial({ ...trial, truths });
  expect(wrong).toEqual([expect.objectContaining({ id: "takeoffVelocity", warned: false })]);
});
