import { type Finding, finding } from "../finding.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings.ts";
import { meanAndDeviation } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";

/** The plates with their zero removed where an empty stretch shows it. */
export interface ZeroedPlates {
  /** Newtons, in the order of the recording's plates. */
  readonly forces: readonly Float64Array[];
  readonly findings: readonly Finding[];
}

/**
 * Removes each plate's zero: its mean over the longest empty stretch (METHODS §1). Of a flight only the middle half
 * counts, because plates ring. Nothing is removed where no stretch is long and calm enough: a zero is never guessed.
 */
export function removePlateZero(
  plates: readonly Plate[],
  rateHz: number,
  emptyStretches: readonly SampleSpan[],
  settings: Settings,
): ZeroedPlates {
  const findings: Finding[] = [];
  const stretch = longestEmpty(emptyStretches, plates[0]!.force.length, rateHz, settings);
  const forces = plates.map((plate) => {
    if (stretch === undefined) return plate.force;
    const { mean, deviation } = meanAndDeviation(plate.force, stretch.start, stretch.end);
    if (deviation > settings.plateOffsetSd || mean === 0) return plate.force;
    if (Math.abs(mean) > settings.plateOffsetNewtons) findings.push(offsetFinding(plate.name, mean));
    return without(plate.force, mean);
  });
  return { forces, findings };
}

/** A plain loop: `map` with a closure took ten times as long on a long recording. */
function without(force: Float64Array, zero: number): Float64Array {
  const result = new Float64Array(force.length);
  for (let index = 0; index < result.length; index += 1) result[index] = force[index]! - zero;
  return result;
}

function longestEmpty(
  stretches: readonly SampleSpan[],
  sampleCount: number,
  rateHz: number,
  settings: Settings,
): SampleSpan | undefined {
  let longest: SampleSpan | undefined;
  for (const span of stretches) {
    const atAnEnd = span.start === 0 || span.end === sampleCount;
    const quarter = Math.floor((span.end - span.start) / 4);
    const inner = { start: span.start + quarter, end: span.end - quarter };
    const least = (atAnEnd ? settings.plateOffsetSeconds / 2 : settings.flightMinimumSeconds / 2) * rateHz;
    const length = inner.end - inner.start;
    if (length >= least && (longest === undefined || length > longest.end - longest.start)) longest = inner;
  }
  return longest;
}

function offsetFinding(plate: string, newtons: number): Finding {
  return finding(
    "plate-offset",
    "warning",
    `Plate ${plate} shows ${newtons.toFixed(1)} N while nobody stands on it; this zero was removed.`,
    "Zero the plates before the next recording.",
    { where: `plate ${plate}` },
  );
}
