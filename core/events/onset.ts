import type { Settings } from "../settings/settings.ts";

/** Half width of the band around body weight inside which somebody still stands, newtons (Owen et al. 2014). */
export function onsetBand(weightNewtons: number, weighingDeviation: number, settings: Settings): number {
  return Math.max(settings.onsetSd * weighingDeviation, settings.onsetWeightFraction * weightNewtons);
}

/** Where an onset is searched. */
export interface OnsetSearch {
  readonly force: Float64Array;
  readonly rateHz: number;
  /** Index from which the search runs backwards: the unweighting minimum, or the peak of a squat jump's rise. */
  readonly from: number;
  /** First sample the onset may lie at. */
  readonly earliest: number;
  readonly weightNewtons: number;
  readonly band: number;
}

/**
 * Onset, searched backwards from the movement: the last instant before it at which force is within the band, minus
 * the set-back (METHODS §3). A forward search for the first departure would stop at sway and at preparatory shifts.
 *
 * @param leaving −1: force leaves the band downwards (countermovement); 1: upwards (the rise of a squat jump)
 * @returns fractional sample, or undefined when force never was within the band: the recording starts in movement.
 */
export function findOnset(search: OnsetSearch, leaving: 1 | -1, settings: Settings): number | undefined {
  const { force, rateHz, from, earliest, weightNewtons, band } = search;
  const edge = weightNewtons + leaving * band;
  for (let index = from - 1; index >= earliest; index -= 1) {
    const here = force[index]!;
    if (leaving * (here - edge) > 0) continue;
    const next = force[index + 1]!;
    // A dip that never leaves the band has no slope to divide by: force is within it up to the dip itself.
    const leaves = index + (leaving * (next - edge) > 0 ? (here - edge) / (here - next) : 1);
    return Math.max(earliest, leaves - settings.onsetBackSeconds * rateHz);
  }
  return undefined;
}
