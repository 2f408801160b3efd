import type { Settings } from "../settings/settings.ts";
import { meanOf } from "./force-signal.ts";
import { sameValueRuns } from "./sample-runs.ts";
import { longestOf, type SampleSpan } from "./sample-span.ts";
import type { LoadSegments } from "./segment-load.ts";

/** Samples of one plate that were not measured. */
export interface StuckSpan {
  readonly plate: number;
  readonly span: SampleSpan;
  /** `lost`: the loaded plate falls to one value and comes back at once; `held`: the last value is repeated. */
  readonly kind: "lost" | "held";
  /** The repeated value, newtons. */
  readonly newtons: number;
}

/**
 * Stretches in which a plate's samples were lost and filled, or its last value was held.
 * @param steps one step of each plate's converter, newtons; 0 where nothing changes
 */
export function stuckSpans(
  forces: readonly Float64Array[],
  steps: readonly number[],
  rateHz: number,
  segments: LoadSegments,
  settings: Settings,
): readonly StuckSpan[] {
  return forces.flatMap((force, plate) => {
    const repeated = sameValueRuns(force, 2);
    return [
      ...lostSpans(force, rateHz, segments, settings).map(
        (span): StuckSpan => ({ plate, span, kind: "lost", newtons: force[span.start]! }),
      ),
      ...heldSpans(force, repeated, steps[plate]!, segments, settings).map(
        (span): StuckSpan => ({ plate, span, kind: "held", newtons: force[span.start]! }),
      ),
    ];
  });
}

/**
 * Force falls to one value, or to the level of the empty plate with its noise, and comes back, both from one sample to the
 * next: no foot leaves a plate like that. A single sample that stands alone is a spike.
 */
function lostSpans(
  force: Float64Array,
  rateHz: number,
  { steadyLoad, emptyLevel, empty }: LoadSegments,
  settings: Settings,
): readonly SampleSpan[] {
  const step = Math.max(
    settings.lostLoadFraction * (steadyLoad - emptyLevel),
    settings.lostNewtonsPerSecond / rateHz,
    settings.emptyMinimumNewtons,
  );
  const longest = longestOf(empty);
  const level = longest === undefined ? 0 : meanOf(force, longest.start, longest.end);
  const isLost = ({ start, end }: SampleSpan): boolean => {
    const held = force.subarray(start, end);
    if (end - start < 2) return false;
    if (held.every((newtons) => newtons === held[0])) return true;
    return (
      end - start >= settings.lostSamples && Math.abs(meanOf(force, start, end) - level) <= settings.emptyMinimumNewtons
    );
  };
  const spans: SampleSpan[] = [];
  const last = force.length - 1;
  for (let index = 1; index < last; index += 1) {
    if (force[index - 1]! - force[index]! <= step) continue;
    const span = levelFrom(force, index, step, settings.emptyMinimumNewtons);
    if (span === undefined || !isLost(span)) continue;
    spans.push(span);
    index = span.end;
  }
  return spans;
}

/** The stretch that stays at one level from a sample on; undefined where it ends otherwise than by a jump upwards. */
function levelFrom(force: Float64Array, start: number, step: number, within: number): SampleSpan | undefined {
  let sum = 0;
  for (let index = start; index < force.length; index += 1) {
    const newtons = force[index]!;
    const level = index === start ? newtons : sum / (index - start);
    if (newtons - level > step && newtons - force[index - 1]! > step) return { start, end: index };
    if (Math.abs(newtons - level) > within) return undefined;
    sum += newtons;
  }
  return undefined;
}

/**
 * The same value for so long that the plate's own noise forbids it: in quiet standing neighbours are equal with some
 * frequency, and runs as long as these are then not to be expected. Without noise there is nothing to tell by, and a
 * stretch at the plate's largest value is an exceeded range.
 */
function heldSpans(
  force: Float64Array,
  repeated: readonly SampleSpan[],
  step: number,
  { quiet, steadyLoad, emptyLevel }: LoadSegments,
  settings: Settings,
): readonly SampleSpan[] {
  const { deviation, equalFraction } = neighboursOf(force, quiet);
  if (
    step === 0 ||
    equalFraction > settings.heldMostEqualFraction ||
    deviation < Math.max(settings.heldNoiseNewtons, settings.heldNoiseSteps * step)
  )
    return [];
  const chance = Math.max(equalFraction, likeliestValue(deviation, step), 1 / force.length);
  const needed = 1 + Math.log(settings.heldExpectedRuns / force.length) / Math.log(chance);
  const least = Math.max(settings.heldSamples, Math.ceil(needed));
  const loadedAbove = emptyLevel + Math.max(settings.emptyMinimumNewtons, settings.emptyLoadFraction * steadyLoad);
  const long = repeated.filter(({ start, end }) => end - start >= least);
  if (long.length === 0) return [];
  let largest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < force.length; index += 1) if (force[index]! > largest) largest = force[index]!;
  return long.filter(({ start }) => force[start]! > loadedAbove && force[start]! < largest);
}

/**
 * How often noise leaves force at one value of the converter at most, where the load lies in the middle of its step: more
 * often than neighbours are equal on the average over all loads. The noise seen holds the converter's rounding, step²/12;
 * the normal distribution within x deviations is √(1 − exp(−2x²/π)) (Pólya 1949), within 0.01.
 */
function likeliestValue(deviation: number, step: number): number {
  const own = deviation ** 2 - step ** 2 / 12;
  return own <= 0 ? 1 : Math.sqrt(1 - Math.exp(-(step ** 2) / (2 * Math.PI * own)));
}

/** White noise (second differences: variance 6σ²) and the part of equal neighbours in quiet standing. */
function neighboursOf(
  force: Float64Array,
  quiet: readonly SampleSpan[],
): { readonly deviation: number; readonly equalFraction: number } {
  let squares = 0;
  let equal = 0;
  let count = 0;
  for (const { start, end } of quiet) {
    for (let index = start + 1; index < end - 1; index += 1) {
      squares += (force[index - 1]! - 2 * force[index]! + force[index + 1]!) ** 2;
      if (force[index] === force[index - 1]) equal += 1;
      count += 1;
    }
  }
  return count === 0
    ? { deviation: 0, equalFraction: 1 }
    : { deviation: Math.sqrt(squares / count / 6), equalFraction: equal / count };
}
