import type { Bearer } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Measure } from "../measures/measure.ts";
import type { TrialResult } from "./trial-result.ts";

/** Whose jump a trial is: both legs', one leg's or, while nobody knows which leg it was, that of the loaded plate. */
export function trialBearer({ limb, feet, measures }: Omit<TrialResult, "status">): Bearer | undefined {
  if (limb === undefined) return undefined;
  const plate = limb === "both" || feet === undefined ? undefined : measures.find((each) => each.plate)?.plate;
  return plate === undefined ? { side: limb } : { plate };
}

/** A measure of what the trial is a jump of; undefined where it has none. */
export function ownMeasure(trial: TrialResult, id: MeasureId): Measure | undefined {
  const bearer = trialBearer(trial);
  return trial.measures.find(
    (each) => each.id === id && each.side === bearer?.side && each.plate === bearer?.plate && bearer !== undefined,
  );
}
