import type { Side } from "../ground/limb.ts";
import { measureEntry } from "../ground/measures/catalogue.ts";
import { capitalised, countOf, sentences } from "../ground/plain-words.ts";
import { startsFromBox, type TestKind, testKinds } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { gainsUnknown } from "../weight/plate-gains.ts";
import { english } from "../words/english.ts";
import { boxHeights, boxHeightText, sameBoxHeight } from "./box-height.ts";
import { type ComparableMeasure, comparableMeasures } from "./comparable-measures.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import type { Comparison, SidesInput } from "./comparison.ts";
import { type DropHeightMismatch, dropHeightMismatches, dropHeightMismatchText } from "./drop-height-legs.ts";
import { heightContradiction } from "./height-indices.ts";
import { indexIntervals } from "./index-intervals.ts";
import { leadsObstacle, withStatedLead } from "./leading-legs.ts";
import { comparePlates, feetOf } from "./plate-columns.ts";
import { plateShare } from "./plate-share.ts";
import { type TrialsOfBothSides, trialsOfBothSides } from "./side-trials.ts";
import { summariseLeads, summariseSides } from "./summarise-side.ts";
import { symmetryIndex } from "./symmetry.ts";
import { trialStatisticOf } from "./trial-statistic.ts";
import { weakerSide } from "./weaker-side.ts";

/** Trials of one test that may be compared with each other: all from one box, where the test starts from one. */
interface TrialsOfTest {
  readonly test: TestKind;
  readonly dropHeightMetres?: number;
  readonly trials: readonly ComparableTrial[];
  /** Where the legs fell from different heights in single-leg trials. */
  readonly mismatch?: DropHeightMismatch;
  /** Box heights of the test's other trials. */
  readonly otherBoxes: readonly (number | undefined)[];
}

function trialsOfTest(input: SidesInput, test: TestKind, settings: Settings): readonly TrialsOfTest[] {
  const trials = input.trials.filter((trial) => trial.test === test);
  if (!startsFromBox(test)) return [{ test, trials, otherBoxes: [] }];
  const heights = boxHeights(trials);
  const mismatches = dropHeightMismatches(trials, settings);
  return heights.map((height) => {
    const mismatch = mismatches.find((each) => sameBoxHeight(each.dropHeightMetres, height));
    return {
      test,
      trials: trials.filter((trial) => sameBoxHeight(trial.dropHeightMetres, height)),
      otherBoxes: heights.filter((each) => each !== height),
      ...(height === undefined ? {} : { dropHeightMetres: height }),
      ...(mismatch === undefined ? {} : { mismatch }),
    };
  });
}

/** Why trials that exist cannot be held against each other; empty where they can. */
function obstacle(entry: ComparableMeasure, of: TrialsOfTest, trials: TrialsOfBothSides): string {
  if (entry.legs === "both") return startsFromBox(of.test) ? leadsObstacle(trials.leads) : "";
  const bothSides = trials.first.measures.length > 0 && trials.second.measures.length > 0;
  return of.mismatch === undefined || !bothSides ? "" : `Not comparable: ${dropHeightMismatchText(of.mismatch)}.`;
}

function missingSide(missing: readonly string[], of: TrialsOfTest): string {
  const box = of.dropHeightMetres === undefined ? "" : ` from ${boxHeightText(of.dropHeightMetres)}`;
  const none = `No trial of the ${missing.join(" or the ")} side${box} that counts has this measure.`;
  const others = of.otherBoxes.map((height) => (height === undefined ? "an unstated height" : boxHeightText(height)));
  if (others.length === 0) return none;
  return `${none} Trials from ${others.join(", ")} stay apart: box heights are never mixed.`;
}

function withoutIndex(
  entry: ComparableMeasure,
  of: TrialsOfTest,
  values: Pick<Comparison, "basis" | "first" | "second">,
): string {
  const { first, second } = values;
  const missing = [first, second].filter((each) => each.mean === undefined).map(english.limbs.bearer);
  if (missing.length > 0) return missingSide(missing, of);
  if (values.basis === "values-only") return "Both knees are involved: values of both sides, no index.";
  if (entry.as === "difference") return "Times are compared as a difference, not as an index.";
  return "A side has a value that is not above zero: there is no index.";
}

function compare(
  input: SidesInput,
  of: TrialsOfTest,
  entry: ComparableMeasure,
  settings: Settings,
): Comparison | undefined {
  const firstSide: Side = input.involved === "right" ? "right" : "left";
  const stated = trialStatisticOf(settings);
  const statistic = stated === "best" && !entry.largestIsBest ? "mean" : stated;
  const paired = entry.legs === "both";
  const ofComparison = {
    test: of.test,
    legs: entry.legs,
    ...(of.dropHeightMetres === undefined ? {} : { dropHeightMetres: of.dropHeightMetres }),
    measure: entry.measure,
    unit: measureEntry(entry.measure).unit,
    role: entry.role,
  } as const;

  // Trials whose feet are in doubt have no sides: where there are no others, their values are those of plates.
  const counting = of.trials.filter((trial) => !trial.excluded && (trial.limb === "both") === paired);
  const known = counting.filter((trial) => trial.feet === undefined);
  const feet = feetOf(counting);
  if (feet !== "proved" && known.length === 0) {
    const byPlate = comparePlates(counting, entry, feet, statistic);
    return byPlate === undefined ? undefined : { ...ofComparison, ...byPlate };
  }
  const found = trialsOfBothSides(known, of.test, entry, firstSide);
  if (found.first.measures.length + found.second.measures.length === 0) return undefined;

  // One number for each side; off a box the mean of both leads.
  const notComparable = obstacle(entry, of, found);
  const led = paired && startsFromBox(of.test) && notComparable === "" ? withStatedLead(found) : undefined;
  const trials = led ?? found;
  const sides = led === undefined ? summariseSides(trials, paired, statistic) : summariseLeads(led, statistic);
  const { first, second } = sides;
  const basis =
    input.involved === "both" ? "values-only" : input.involved === "none" ? "left-right" : "involved-uninvolved";
  const common = {
    ...ofComparison,
    basis,
    first,
    second,
    ...(led === undefined ? {} : { leads: led.leads }),
    ...(paired || feet !== "proved" ? { plates: feet } : {}),
  } as const;

  // Side against side, where that means something.
  const both = first.mean !== undefined && second.mean !== undefined;
  if (notComparable !== "" && basis !== "values-only") {
    return { ...common, intervals: [], intervalNote: notComparable, notComparable, weaker: "" };
  }
  if (!both || basis === "values-only" || entry.as === "difference" || !(first.mean > 0) || !(second.mean > 0)) {
    const differs = both && basis !== "values-only" && entry.as === "difference";
    return {
      ...common,
      intervals: [],
      intervalNote: withoutIndex(entry, of, common),
      weaker: "",
      ...(differs ? { difference: first.mean - second.mean } : {}),
    };
  }
  const index = symmetryIndex(first.mean, second.mean);
  const share = plateShare(entry.measure, entry.legs, trials.used, firstSide, input.gains ?? gainsUnknown(settings));
  const contradiction = paired ? undefined : heightContradiction(entry.measure, known, firstSide, settings);
  const made = indexIntervals(common, trials, statistic, share, settings);
  const widest = made.intervals.reduce<Comparison["intervals"][number] | undefined>(
    (kept, each) => (kept === undefined || each.confidence > kept.confidence ? each : kept),
    undefined,
  );
  const inDoubt = counting.length - known.length;
  const leftOut = found.first.measures.length - trials.first.measures.length;
  return {
    ...common,
    index,
    ...made,
    ...(share === undefined ? {} : { plateShare: share }),
    ...(contradiction === undefined ? {} : { contradiction }),
    intervalNote: sentences(
      made.intervalNote,
      inDoubt === 0 ? "" : `${capitalised(countOf(inDoubt, "trial"))} whose feet are in doubt left out.`,
      contradiction ?? "",
      leftOut === 0 ? "" : `${capitalised(countOf(leftOut, "trial"))} without a stated leading leg left out.`,
      statistic === stated ? "" : "The mean stands for the trials: the largest value is not the best one here.",
    ),
    weaker:
      basis === "left-right" ? weakerSide(firstSide, index, entry.largestIsBest ? "weaker" : "lower", widest) : "",
  };
}

/**
 * Side against side for one session: one comparison for each comparable measure that any trial has, in the order of
 * `comparableMeasures`, and for each box height on its own. Too few trials are still compared in numbers; whether that
 * may meet a criterion is decided later (METHODS §8).
 */
export function compareSides(input: SidesInput, settings: Settings): readonly Comparison[] {
  return testKinds.flatMap((test) => {
    const entries = comparableMeasures.filter((entry) => entry.tests.includes(test));
    return trialsOfTest(input, test, settings).flatMap((of) =>
      entries.flatMap((entry) => compare(input, of, entry, settings) ?? []),
    );
  });
}
