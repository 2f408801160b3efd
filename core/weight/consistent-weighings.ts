import type { Settings } from "../settings/settings.ts";
import { type LogPrediction, type ModelRow, SessionModel } from "./session-model.ts";
import type { OwnWeighing } from "./weighed-trial.ts";

/** A weighing as a row of the session's model. */
export function modelRow({ own, shares }: OwnWeighing, plates: readonly string[]): ModelRow {
  return {
    logWeight: Math.log(own.newtons),
    uncertainty: own.uncertainty / own.newtons,
    shares: sharesOn(shares, plates),
    scatters: true,
  };
}

export function sharesOn(shares: OwnWeighing["shares"], plates: readonly string[]): readonly number[] {
  return plates.map((plate) => shares.find((each) => each.plate === plate)?.share ?? 0);
}

/** A weighing held against what others predict for it. */
export interface WeightDifference {
  /** Own over predicted less one. */
  readonly difference: number;
  /** Standard uncertainty of both together, as a part. */
  readonly jointUncertainty: number;
}

export function differenceFrom(row: ModelRow, predicted: LogPrediction): WeightDifference {
  return {
    difference: Math.exp(row.logWeight - predicted.logWeight) - 1,
    jointUncertainty: Math.sqrt(row.uncertainty ** 2 + predicted.variance),
  };
}

/** True beyond `weightDiffersSd` joint uncertainties and `weightDiffersFraction` of the weight (METHODS §2). */
export function isDifferent({ difference, jointUncertainty }: WeightDifference, settings: Settings): boolean {
  const size = Math.abs(difference);
  return size > settings.weightDiffersSd * jointUncertainty && size > settings.weightDiffersFraction;
}

/**
 * The rows that agree with each other: of those near the median, without the ones that the rest contradicts, worst
 * first. One hand on a rail, or a few recordings of somebody else, do not move it.
 * @returns positions in `rows`; none unless they are more than half
 */
export function consistentRows(rows: readonly ModelRow[], plates: number, settings: Settings): readonly number[] {
  const middle = medianOf(rows.map((row) => row.logWeight));
  const near = Math.log(1 + settings.anotherAthleteFraction);
  let kept = rows.flatMap((row, index) =>
    Math.abs(row.logWeight - middle) <= Math.max(near, settings.weightDiffersSd * row.uncertainty) ? [index] : [],
  );
  while (kept.length > 1) {
    const chosen = kept.map((index) => rows[index]!);
    const model = new SessionModel(chosen, plates, settings);
    const beyond = chosen.map((row, index) => {
      const compared = differenceFrom(row, model.predictLeavingOut(index));
      return isDifferent(compared, settings) ? Math.abs(compared.difference) / compared.jointUncertainty : 0;
    });
    const worst = Math.max(...beyond);
    if (worst === 0) break;
    kept = kept.filter((_, index) => beyond[index]! < settings.weightAlikeBadFraction * worst);
  }
  return 2 * kept.length > rows.length ? kept : [];
}

function medianOf(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
