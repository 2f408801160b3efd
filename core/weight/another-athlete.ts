import type { Settings } from "../settings/settings.ts";
import type { PlateGains } from "./plate-gains.ts";
import type { OwnWeighing, TrialName } from "./weighed-trial.ts";

/** Trials whose weights one person may have. */
export interface WeightGroup {
  /** Mean weight, plates allowed for, newtons. */
  readonly newtons: number;
  readonly trials: readonly TrialName[];
}

/** Weights of one session that no one person can have, until a person says whose they are. */
export interface AthleteQuestion {
  /** The larger group first. */
  readonly groups: readonly [WeightGroup, WeightGroup];
  /** The heavier group's weight over the lighter one's, less one. */
  readonly difference: number;
  /** Positions in `groups` that are left out of means meanwhile: the smaller one where it is much smaller, else both. */
  readonly held: readonly (0 | 1)[];
}

/**
 * Asks whether two people are in one session: its weights, in order, fall into two groups further apart than
 * `anotherAthleteFraction`, what the plates may differ by taken off, and than three standard uncertainties. Not asked
 * once every trial of either group is kept.
 * @param gains of the weighings that agree; where none do, the tolerance of the plates is allowed for
 */
export function anotherAthlete(
  trials: readonly OwnWeighing[],
  gains: PlateGains,
  enteredNewtons: number | undefined,
  settings: Settings,
): AthleteQuestion | undefined {
  const known = gains.plates.length > 0;
  const most = settings.anotherAthleteGainSd * gains.priorSd;
  const gainOf = (plate: string): number => {
    const index = gains.plates.indexOf(plate);
    return index < 0 ? 0 : Math.max(-most, Math.min(most, gains.estimates[index]!));
  };
  const sorted = trials
    .map((trial) => ({
      trial,
      log: Math.log(trial.own.newtons) - trial.shares.reduce((sum, each) => sum + each.share * gainOf(each.plate), 0),
      weight: 1 / ((trial.own.uncertainty / trial.own.newtons) ** 2 + settings.weightScatterTypical ** 2),
    }))
    .toSorted((a, b) => a.log - b.log);
  const cut = largestGap(sorted.map((each) => each.log));
  if (cut === undefined) return undefined;
  const [light, heavy] = [sorted.slice(0, cut), sorted.slice(cut)];
  const [lower, upper] = [meanOf(light), meanOf(heavy)];
  const apart = upper.mean - lower.mean;
  const allowed = known ? 0 : most * sharesApart(light, heavy);
  const limit = Math.max(
    Math.log(1 + settings.anotherAthleteFraction) + allowed,
    settings.weightDiffersSd * Math.hypot(lower.uncertainty, upper.uncertainty),
  );
  if (!(apart > limit)) return undefined;
  if ([light, heavy].some((group) => group.every(({ trial }) => trial.kept))) return undefined;
  const group = (of: typeof sorted, mean: number): WeightGroup => ({
    newtons: Math.exp(mean),
    trials: of.map(({ trial: { file, trial } }) => ({ file, trial })).toSorted(byName),
  });
  const both = [group(light, lower.mean), group(heavy, upper.mean)] as const;
  const groups = both[1].trials.length > both[0].trials.length ? ([both[1], both[0]] as const) : both;
  return { groups, difference: Math.exp(apart) - 1, held: heldGroups(groups, enteredNewtons, settings) };
}

function heldGroups(
  groups: AthleteQuestion["groups"],
  enteredNewtons: number | undefined,
  settings: Settings,
): AthleteQuestion["held"] {
  const [larger, smaller] = groups;
  if (enteredNewtons !== undefined) {
    const off = groups.map(({ newtons }) => Math.abs(newtons / enteredNewtons - 1) > settings.anotherAthleteFraction);
    if (off[0] !== off[1]) return off[0] ? [0] : [1];
  }
  return smaller.trials.length < settings.strangerGroupFraction * larger.trials.length ? [1] : [0, 1];
}

/** Where to cut ordered values so that the widest gap lies between the parts; undefined with fewer than two. */
function largestGap(sorted: readonly number[]): number | undefined {
  let cut: number | undefined;
  let widest = 0;
  for (let index = 1; index < sorted.length; index += 1) {
    const gap = sorted[index]! - sorted[index - 1]!;
    if (gap > widest) [cut, widest] = [index, gap];
  }
  return cut;
}

interface Weighted {
  readonly trial: OwnWeighing;
  readonly log: number;
  readonly weight: number;
}

function meanOf(group: readonly Weighted[]): { readonly mean: number; readonly uncertainty: number } {
  const total = group.reduce((sum, each) => sum + each.weight, 0);
  return {
    mean: group.reduce((sum, each) => sum + each.weight * each.log, 0) / total,
    uncertainty: 1 / Math.sqrt(total),
  };
}

/** How differently two groups load the plates: 0 on the same ones, √2 on one plate each. */
function sharesApart(first: readonly Weighted[], second: readonly Weighted[]): number {
  const mean = new Map<string, number>();
  for (const [group, sign] of [
    [first, 1],
    [second, -1],
  ] as const) {
    for (const { trial } of group) {
      for (const { plate, share } of trial.shares) {
        mean.set(plate, (mean.get(plate) ?? 0) + (sign * share) / group.length);
      }
    }
  }
  return Math.hypot(...mean.values());
}

function byName(a: TrialName, b: TrialName): number {
  if (a.file !== b.file) return a.file < b.file ? -1 : 1;
  return a.trial - b.trial;
}
