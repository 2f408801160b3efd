import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, meanAndDeviation } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * Tops at a plate's largest force that are flat but for its noise, one of which at least begins and ends in a corner: an
 * amplifier's range was exceeded before the noise came on. Force that is held by an athlete bends into its level and out.
 */
export function limitedSpans(
  { force, rateHz }: ForceSignal,
  standingNewtons: number,
  quiet: readonly SampleSpan[],
  settings: Settings,
): readonly SampleSpan[] {
  const noise = Math.max(settings.heldNoiseNewtons, ...quiet.map((span) => whiteNoise(force, span)));
  const band = settings.limitedBandDeviations * noise;
  const shortest = Math.max(settings.clippedSamples, Math.round(settings.limitedTopSeconds * rateHz));
  const beside = Math.max(4, Math.round(settings.limitedBesideSeconds * rateHz));
  let largest = Number.NEGATIVE_INFINITY;
  for (const newtons of force) if (newtons > largest) largest = newtons;
  if (largest <= standingNewtons) return [];
  const isFlat = ({ start, end }: SampleSpan): boolean => {
    const inner = Math.floor((end - start) / 4);
    const { mean, deviation } = meanAndDeviation(force, start + inner, end - inner);
    return deviation <= 2 * noise && largest - mean <= 2 * band;
  };
  const ends = ({ start, end }: SampleSpan): boolean => {
    const level = meanAndDeviation(force, start, end).mean;
    return (
      isCorner(force, start, -1, level, band, beside, settings) &&
      isCorner(force, end - 1, 1, level, band, beside, settings)
    );
  };
  // The largest sample stands a deviation or more above the level that it is one of.
  const flat = stretchesAbove(force, largest - 2 * band, shortest).filter(isFlat);
  // Where corners show the limit once, whatever else stays at it has reached it too.
  return flat.some(ends) ? flat : [];
}

/** Stretches of at least so many samples above a force. */
function stretchesAbove(force: Float64Array, newtons: number, shortest: number): readonly SampleSpan[] {
  const spans: SampleSpan[] = [];
  let start = -1;
  for (let index = 0; index <= force.length; index += 1) {
    const above = index < force.length && force[index]! > newtons;
    if (above && start < 0) start = index;
    if (above || start < 0) continue;
    if (index - start >= shortest) spans.push({ start, end: index });
    start = -1;
  }
  return spans;
}

/**
 * True where force leaves a level along a straight line, as behind a corner, and not along a parabola: of the two that are
 * zero up to the same place, free to lie within the stretch beside it, the line leaves less beside it.
 */
function isCorner(
  force: Float64Array,
  end: number,
  direction: 1 | -1,
  level: number,
  band: number,
  beside: number,
  settings: Settings,
): boolean {
  const fall = (distance: number): number => level - (force[end + direction * distance] ?? level);
  if (fall(beside) < settings.limitedLeastFallBands * band) return false;
  let line = Number.POSITIVE_INFINITY;
  let parabola = Number.POSITIVE_INFINITY;
  for (let corner = -beside; corner < beside / 2; corner += 1) {
    const fits = [1, 2].map((power) => restBeside(fall, corner, beside, power));
    line = Math.min(line, fits[0]!);
    parabola = Math.min(parabola, fits[1]!);
  }
  return settings.limitedCornerRatio * line < parabola;
}

/** Sum of squares that is left beside the level before a corner and a power of the distance behind it. */
function restBeside(fall: (distance: number) => number, corner: number, beside: number, power: number): number {
  let products = 0;
  let squares = 0;
  for (let distance = -beside; distance <= beside; distance += 1) {
    const reach = Math.max(0, distance - corner) ** power;
    products += reach * fall(distance);
    squares += reach * reach;
  }
  const slope = squares === 0 ? 0 : products / squares;
  let rest = 0;
  for (let distance = -beside; distance <= beside; distance += 1) {
    rest += (fall(distance) - slope * Math.max(0, distance - corner) ** power) ** 2;
  }
  return rest;
}

/** Noise from sample to sample, from second differences (variance 6σ²). */
function whiteNoise(force: Float64Array, { start, end }: SampleSpan): number {
  let squares = 0;
  for (let index = start + 1; index < end - 1; index += 1) {
    squares += (force[index - 1]! - 2 * force[index]! + force[index + 1]!) ** 2;
  }
  return Math.sqrt(squares / Math.max(1, end - start - 2) / 6);
}
