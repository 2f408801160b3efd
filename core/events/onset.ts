import type { Settings } from "../settings.ts";

/** Half width of the band around body weight inside which somebody still stands, newtons (Owen et al. 2014). */
export function onsetBand(weightNewtons: number, weighingDeviation: number, settings: Settings): number {
  return Math.max(settings.onsetSd * weighingDeviation, settings.onsetWeightFraction * weightNewtons);
}

/**
 * Onset, searched backwards from the unweighting minimum: the last instant before the dip at which force is within
 * the band, minus the set-back (METHODS §3). A forward search for the first departure would stop at sway and at
 * preparatory shifts.
 *
 * @param minimum index of the unweighting minimum
 * @param earliest first sample the onset may lie at
 * @returns fractional sample, or undefined when force never was within the band: the recording starts in movement.
 */
export function findOnset(
  force: Float64Array,
  rateHz: number,
  minimum: number,
  earliest: number,
  weightNewtons: number,
  band: number,
  settings: Settings,
): number | undefined {
  const floor = weightNewtons - band;
  for (let index = minimum - 1; index >= earliest; index -= 1) {
    const here = force[index]!;
    if (here < floor) continue;
    const next = force[index + 1]!;
    const leaves = index + (here - floor) / (here - next);
    return Math.max(earliest, leaves - settings.onsetBackSeconds * rateHz);
  }
  return undefined;
}
