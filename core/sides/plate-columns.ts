import type { Measure } from "../measures/measure.ts";
import type { FeetInDoubt } from "../recording/recording.ts";
import type { ComparableMeasure } from "./comparable-measures.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import type { Comparison, SideSummary } from "./comparison.ts";
import { standingValue, type TrialStatistic } from "./trial-statistic.ts";

/** What feet in doubt cost a comparison, and what ends it. */
const doubtNotes: Readonly<Record<FeetInDoubt, string>> = {
  unproved: "Which foot stood on which plate is not proved: the values are those of the plates, and there is no index.",
  contradicted:
    "Which foot stood on which plate is contradicted: the values are those of the plates, and there is no index.",
};

/** How far it is known in trials which foot stood where: the weakest of them. */
export function feetOf(trials: readonly Pick<ComparableTrial, "feet">[]): NonNullable<Comparison["plates"]> {
  const doubts = trials.flatMap((trial) => trial.feet ?? []);
  return doubts.includes("contradicted") ? "contradicted" : doubts.includes("unproved") ? "unproved" : "proved";
}

/**
 * The values of trials by plate, while nobody knows which foot stood on one: no index, no side, nothing per kilogram.
 * Of single-leg trials those on two plates, each with the plate that carried it.
 * @returns undefined where no trial has the measure
 */
export function comparePlates(
  trials: readonly ComparableTrial[],
  entry: ComparableMeasure,
  doubt: FeetInDoubt,
  statistic: TrialStatistic,
): Pick<Comparison, "basis" | "first" | "second" | "intervals" | "intervalNote" | "weaker" | "plates"> | undefined {
  const summary = (plate: number): SideSummary => {
    const values = trials.flatMap((trial) => measureOnPlate(trial, entry, plate)?.value ?? []);
    return { plate, values, ...(values.length === 0 ? {} : { mean: standingValue(values, statistic) }) };
  };
  const [first, second] = [summary(1), summary(2)];
  if (first.values.length + second.values.length === 0) return undefined;
  return {
    basis: "plates",
    first,
    second,
    intervals: [],
    intervalNote: doubtNotes[doubt],
    weaker: "",
    plates: doubt,
  };
}

function measureOnPlate(trial: ComparableTrial, entry: ComparableMeasure, plate: number): Measure | undefined {
  const side = trial.limb === "both" ? trial.plateLimbs[plate - 1] : trial.limb;
  if (side === undefined || side === "both" || (trial.limb !== "both" && trial.loadedPlate !== plate)) return undefined;
  return trial.measures.find((each) => each.id === entry.measure && each.side === side);
}
