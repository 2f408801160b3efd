import type { Side } from "../ground/limb.ts";
import { oppositeSide } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { Measure } from "../measures/measure.ts";
import type { ComparableMeasure } from "./comparable-measures.ts";
import type { ComparableTrial } from "./comparable-trial.ts";

/** One side's measure in the trials used, in trial order. */
export interface SideTrials {
  readonly side: Side;
  readonly measures: readonly Measure[];
  /** The body-mass form of each trial; absent where a trial has none. */
  readonly perBodyMass: readonly (Measure | undefined)[];
}

/** Both sides' trials of one comparison. Two-leg trials are in step: entry k of both sides is the same trial. */
export interface TrialsOfBothSides {
  readonly first: SideTrials;
  readonly second: SideTrials;
  /** The leg that led off a box in each two-leg trial, in step with both sides; empty for single-leg trials. */
  readonly leads: readonly (Side | undefined)[];
  /** The trials themselves, of both sides. */
  readonly used: readonly ComparableTrial[];
}

/** Two-leg trials from a box, each with the leg that led. */
export type LeadTrials = TrialsOfBothSides & { readonly leads: readonly Side[] };

function measureOf(trial: ComparableTrial, id: MeasureId | `${MeasureId}PerBodyMass`, side: Side): Measure | undefined {
  return trial.measures.find((measure) => measure.id === id && measure.side === side);
}

function sideTrials(trials: readonly ComparableTrial[], id: MeasureId, side: Side): SideTrials {
  const working = trials.filter((trial) => trial.limb === "both" || trial.limb === side);
  const having = working.flatMap((trial) => {
    const measure = measureOf(trial, id, side);
    return measure === undefined ? [] : [{ measure, perBodyMass: measureOf(trial, `${id}PerBodyMass`, side) }];
  });
  return {
    side,
    measures: having.map((each) => each.measure),
    perBodyMass: having.map((each) => each.perBodyMass),
  };
}

/** The trials a comparison rests on: of its test, not excluded, having the measure (on both sides in two-leg trials). */
export function trialsOfBothSides(
  trials: readonly ComparableTrial[],
  test: TestKind,
  entry: ComparableMeasure,
  firstSide: Side,
): TrialsOfBothSides {
  const secondSide = oppositeSide(firstSide);
  const sound = trials.filter((trial) => trial.test === test && !trial.excluded);
  const used =
    entry.legs === "single"
      ? sound.filter((trial) => trial.limb !== "both")
      : sound.filter(
          (trial) =>
            trial.limb === "both" &&
            measureOf(trial, entry.measure, firstSide) !== undefined &&
            measureOf(trial, entry.measure, secondSide) !== undefined,
        );
  return {
    first: sideTrials(used, entry.measure, firstSide),
    second: sideTrials(used, entry.measure, secondSide),
    used,
    leads: entry.legs === "single" ? [] : used.map((trial) => trial.leadingLeg),
  };
}
