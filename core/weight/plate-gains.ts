import type { Settings } from "../settings/settings.ts";
import type { Matrix } from "./cholesky.ts";
import type { GainPosterior } from "./session-model.ts";
import type { TrialName } from "./weighed-trial.ts";

/** How much more or less the plates of a session read than they should, as far as its standing tells (METHODS §2). */
export interface PlateGains extends GainPosterior {
  /** Names of the plates, in the order of estimates and covariance. */
  readonly plates: readonly string[];
  /** The trials whose standing they are from. */
  readonly from: readonly TrialName[];
  /** Standard deviation of the gain of any other plate. */
  readonly priorSd: number;
}

/** A difference of gains as a part (natural logarithm of their ratio). */
export interface GainDifference {
  readonly difference: number;
  /** Standard uncertainty. */
  readonly uncertainty: number;
}

/** How much more one plate of a session reads than another, as a part (natural logarithm of the ratio of their gains). */
export interface PlateDifference extends GainDifference {
  readonly first: string;
  readonly second: string;
  /** Weighings that it is from. */
  readonly trials: number;
}

/** Each plate against each later one, in the order of their names. */
export function plateDifferences(gains: PlateGains): readonly PlateDifference[] {
  const { plates, from } = gains;
  return plates.flatMap((first, index) =>
    plates.slice(index + 1).flatMap((second) => {
      const apart = gainDifference(
        gains,
        new Map([
          [first, 1],
          [second, -1],
        ]),
      );
      return apart === undefined ? [] : [{ first, second, ...apart, trials: from.length }];
    }),
  );
}

/** Nothing is known of any plate but its tolerance. */
export function gainsUnknown(settings: Settings): PlateGains {
  return { plates: [], from: [], estimates: [], covariance: [], priorSd: settings.plateGainTolerance };
}

/**
 * By how much plates read more than others: of each plate the part it has in what is compared, those on one side above
 * zero and those on the other below. Undefined where both sides stood on the same plates, so that gains cancel.
 */
export function gainDifference(gains: PlateGains, parts: ReadonlyMap<string, number>): GainDifference | undefined {
  const differing = [...parts].filter(([, part]) => Math.abs(part) > 1e-9);
  if (differing.length === 0) return undefined;
  const variance = (first: string, second: string): number => {
    const [row, column] = [gains.plates.indexOf(first), gains.plates.indexOf(second)];
    if (row >= 0 && column >= 0) return at(gains.covariance, row, column);
    return first === second ? gains.priorSd ** 2 : 0;
  };
  let difference = 0;
  let square = 0;
  for (const [plate, part] of differing) {
    const index = gains.plates.indexOf(plate);
    difference += part * (index < 0 ? 0 : gains.estimates[index]!);
    for (const [other, otherPart] of differing) square += part * otherPart * variance(plate, other);
  }
  return { difference, uncertainty: Math.sqrt(Math.max(0, square)) };
}

/** Parts of plates in a comparison: the mean over the trials of one side less that over the other's. */
export function platesCompared(first: readonly string[], second: readonly string[]): ReadonlyMap<string, number> {
  const parts = new Map<string, number>();
  for (const plate of first) parts.set(plate, (parts.get(plate) ?? 0) + 1 / first.length);
  for (const plate of second) parts.set(plate, (parts.get(plate) ?? 0) - 1 / second.length);
  return parts;
}

function at(matrix: Matrix, row: number, column: number): number {
  return matrix[row]![column]!;
}
