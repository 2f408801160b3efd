import type { Side } from "../limb.ts";
import { measureEntry } from "../measures/catalogue.ts";
import type { Settings } from "../settings.ts";
import { type TestKind, testKinds } from "../test-kind.ts";
import { type ComparableMeasure, comparableMeasures } from "./comparable-measures.ts";
import type { Comparison, SidesInput } from "./comparison.ts";
import { indexIntervals } from "./index-intervals.ts";
import { trialsOfBothSides } from "./side-trials.ts";
import { bestTrial, summariseSide } from "./summarise-side.ts";
import { symmetryIndex } from "./symmetry.ts";
import { trialStatisticOf } from "./trial-statistic.ts";
import { weakerSide } from "./weaker-side.ts";

function withoutIndex(entry: ComparableMeasure, values: Pick<Comparison, "basis" | "first" | "second">): string {
  const { first, second } = values;
  const missing = [first, second].filter((each) => each.mean === undefined).map((each) => each.side);
  if (missing.length > 0) return `No trial of the ${missing.join(" or the ")} side has this measure.`;
  if (values.basis === "values-only") return "Both knees are involved: values of both sides, no index.";
  if (entry.as === "difference") return "Times are compared as a difference, not as an index.";
  return "A side has a value that is not above zero: there is no index.";
}

function compare(
  input: SidesInput,
  test: TestKind,
  entry: ComparableMeasure,
  settings: Settings,
): Comparison | undefined {
  const firstSide: Side = input.involved === "right" ? "right" : "left";
  const trials = trialsOfBothSides(input.trials, test, entry, firstSide);
  if (trials.first.measures.length + trials.second.measures.length === 0) return undefined;

  // One number for each side.
  const stated = trialStatisticOf(settings);
  const statistic = stated === "best" && !entry.largestIsBest ? "mean" : stated;
  const paired = entry.legs === "both";
  const bestFirst = bestTrial(trials.first.measures, paired ? trials.second.measures : []);
  const bestSecond = paired ? bestFirst : bestTrial(trials.second.measures);
  const first = summariseSide(trials.first, statistic, bestFirst);
  const second = summariseSide(trials.second, statistic, bestSecond);
  const basis =
    input.involved === "both" ? "values-only" : input.involved === "none" ? "left-right" : "involved-uninvolved";
  const common = {
    test,
    legs: entry.legs,
    measure: entry.measure,
    unit: measureEntry(entry.measure).unit,
    basis,
    first,
    second,
    role: entry.role,
    ...(paired ? { plates: trials.plates } : {}),
  } as const;

  // Side against side, where that means something.
  const both = first.mean !== undefined && second.mean !== undefined;
  if (!both || basis === "values-only" || entry.as === "difference" || !(first.mean > 0) || !(second.mean > 0)) {
    const differs = both && basis !== "values-only" && entry.as === "difference";
    return {
      ...common,
      intervals: [],
      intervalNote: withoutIndex(entry, common),
      weaker: "",
      ...(differs ? { difference: first.mean - second.mean } : {}),
    };
  }
  const index = symmetryIndex(first.mean, second.mean);
  const made = indexIntervals(entry.legs, trials, { first, second }, statistic, settings);
  const widest = made.intervals.reduce<Comparison["intervals"][number] | undefined>(
    (kept, each) => (kept === undefined || each.confidence > kept.confidence ? each : kept),
    undefined,
  );
  return {
    ...common,
    index,
    ...made,
    intervalNote:
      statistic === stated
        ? made.intervalNote
        : `${made.intervalNote} The mean stands for the trials: the largest value is not the best one here.`,
    weaker:
      basis === "left-right" ? weakerSide(firstSide, index, entry.largestIsBest ? "weaker" : "lower", widest) : "",
  };
}

/**
 * Side against side for one session: one comparison for each comparable measure that any trial has, in the order of
 * `comparableMeasures`. Too few trials are still compared in numbers; whether that may meet a criterion is decided
 * later (METHODS §8).
 */
export function compareSides(input: SidesInput, settings: Settings): readonly Comparison[] {
  return testKinds.flatMap((test) =>
    comparableMeasures
      .filter((entry) => entry.tests.includes(test))
      .flatMap((entry) => compare(input, test, entry, settings) ?? []),
  );
}
