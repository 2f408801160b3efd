import type { Settings } from "../settings/settings.ts";
import { meanAndDeviation } from "./force-signal.ts";
import { passingLoad } from "./passing-load.ts";
import type { SampleSpan } from "./sample-span.ts";

/** A coarse look at a recording: where the plate is empty, and where somebody stands still on it (METHODS §1). */
export interface LoadSegments {
  /** Largest steady load in newtons: somebody standing still. 0 when nobody ever does. */
  readonly steadyLoad: number;
  /** Level of the empty plate as first seen, before any plate zero is taken, newtons. */
  readonly emptyLevel: number;
  /** The lowest mean of a block, and the sample at its middle. */
  readonly lowest: { readonly newtons: number; readonly sample: number };
  /** Stretches in which the plate is empty, in order. */
  readonly empty: readonly SampleSpan[];
  /** Stretches of loaded quiet standing, in order. */
  readonly quiet: readonly SampleSpan[];
}

/** Cuts the total force into empty, quiet and moving stretches. */
export function segmentLoad(total: Float64Array, rateHz: number, settings: Settings): LoadSegments {
  const block = Math.max(2, Math.round(settings.quietBlockSeconds * rateHz));
  const smooth = runningMean(total, block);
  const { lowest, highest } = extremesOf(smooth);
  const emptyLevel = lowestSteadyLevel(total, lowest, smooth[highest]!, block, settings);
  const steadyLoad = findSteadyLoad(total, rateHz, emptyLevel, settings);
  const threshold = Math.max(settings.emptyMinimumNewtons, settings.emptyLoadFraction * (steadyLoad - emptyLevel));
  const empty = emptySpans(total, rateHz, emptyLevel, threshold, settings);
  return {
    steadyLoad,
    emptyLevel,
    lowest: { newtons: smooth[lowest]!, sample: lowest },
    empty,
    quiet: quietSpans(smooth, steadyLoad, emptyLevel, rateHz, settings),
  };
}

/** Centred running mean over `width` samples; shorter at the ends. */
export function runningMean(values: Float64Array, width: number): Float64Array {
  const count = values.length;
  const half = Math.floor(width / 2);
  const mean = new Float64Array(count);
  let sum = 0;
  let start = 0;
  let end = 0;
  for (let index = 0; index < count; index += 1) {
    const wantedEnd = Math.min(count, index + half + 1);
    const wantedStart = Math.max(0, index - half);
    while (end < wantedEnd) {
      sum += values[end]!;
      end += 1;
    }
    while (start < wantedStart) {
      sum -= values[start]!;
      start += 1;
    }
    mean[index] = sum / (end - start);
  }
  return mean;
}

/** Where the first of the smallest values stands, and the first of the largest. */
function extremesOf(values: Float64Array): { readonly lowest: number; readonly highest: number } {
  let lowest = 0;
  let highest = 0;
  let least = values[0]!;
  let most = values[0]!;
  const count = values.length;
  for (let index = 1; index < count; index += 1) {
    const value = values[index]!;
    if (value < least) {
      least = value;
      lowest = index;
    } else if (value > most) {
      most = value;
      highest = index;
    }
  }
  return { lowest, highest };
}

/** The lowest level the plate rests at: its zero, or 0 N where it is never unloaded. */
function lowestSteadyLevel(
  total: Float64Array,
  lowest: number,
  highestNewtons: number,
  block: number,
  settings: Settings,
): number {
  const half = Math.floor(block / 2);
  const from = Math.max(0, lowest - half);
  const to = Math.min(total.length, lowest + half + 1);
  const { mean, deviation } = meanAndDeviation(total, from, to);
  const small = Math.abs(mean) < settings.emptyLoadFraction * highestNewtons;
  return small && deviation < settings.plateOffsetSd ? mean : 0;
}

function findSteadyLoad(total: Float64Array, rateHz: number, emptyLevel: number, settings: Settings): number {
  const asked = { signal: { rateHz, force: total }, emptyLevel };
  const everyEmpty = (): readonly SampleSpan[] =>
    emptySpans(total, rateHz, emptyLevel, settings.emptyMinimumNewtons, settings);
  let empty: readonly SampleSpan[] | undefined;
  const steadySeconds = [
    settings.steadyLoadSeconds,
    settings.steadyLoadShorterSeconds,
    settings.steadyLoadShortSeconds,
    settings.steadyLoadShortestSeconds,
  ];
  for (const seconds of steadySeconds) {
    const width = Math.round(seconds * rateHz);
    if (width < 4 || width > total.length) continue;
    const passes = (end: number, newtons: number): boolean => {
      if (seconds > settings.passingLoadSeconds) return false;
      empty ??= everyEmpty();
      return passingLoad({ ...asked, empty }, { span: { start: end - width, end }, newtons }, settings);
    };
    const window = steadiestLoadedWindow(total, width, emptyLevel, passes, settings);
    if (window !== undefined) return window;
  }
  return 0;
}

/**
 * Mean load of the steadiest window that carries an athlete and varies little; undefined when there is none.
 * @param passes tells of a window that ends before a sample, and of its load, whether it belongs to a movement
 */
function steadiestLoadedWindow(
  total: Float64Array,
  width: number,
  emptyLevel: number,
  passes: (end: number, newtons: number) => boolean,
  settings: Settings,
): number | undefined {
  const leastLoad = emptyLevel + settings.bodyMassMinimumKg * settings.gravity;
  let sum = 0;
  let squares = 0;
  let bestVariance = Number.POSITIVE_INFINITY;
  let bestMean: number | undefined;
  const count = total.length;
  for (let index = 0; index < count; index += 1) {
    const value = total[index]! - emptyLevel;
    sum += value;
    squares += value * value;
    if (index >= width) {
      const gone = total[index - width]! - emptyLevel;
      sum -= gone;
      squares -= gone * gone;
    }
    if (index < width - 1) continue;
    const mean = sum / width;
    const variance = squares / width - mean * mean;
    if (mean < leastLoad - emptyLevel || variance >= bestVariance) continue;
    if (variance <= (settings.steadyDeviationFraction * mean) ** 2 && !passes(index + 1, mean + emptyLevel)) {
      bestVariance = variance;
      bestMean = mean + emptyLevel;
    }
  }
  return bestMean;
}

function emptySpans(
  total: Float64Array,
  rateHz: number,
  emptyLevel: number,
  threshold: number,
  settings: Settings,
): readonly SampleSpan[] {
  const loadedAbove = emptyLevel + threshold;
  const emptyBelow = emptyLevel + threshold * settings.emptyHysteresisFraction;
  const shortestContact = settings.contactHoldSeconds * rateHz;
  const spans: { start: number; end: number }[] = [];
  let loaded = total[0]! > loadedAbove;
  let start = 0;
  const count = total.length;
  for (let index = 0; index <= count; index += 1) {
    const ends = index === count;
    const changes = !ends && (loaded ? total[index]! < emptyBelow : total[index]! > loadedAbove);
    if (!changes && !ends) continue;
    if (!loaded) {
      // A blip shorter than any contact (ringing, noise) does not end an empty stretch.
      const previous = spans.at(-1);
      if (previous !== undefined && start - previous.end < shortestContact) previous.end = index;
      else spans.push({ start, end: index });
    }
    loaded = !loaded;
    start = index;
  }
  return spans.filter((span) => span.end > span.start);
}

/**
 * Stretches of quiet standing. A wide band around the steady load finds them; each is then held to the band around
 * its own level, because a hand on a rail or another footing shifts the level and is quiet all the same.
 */
function quietSpans(
  smooth: Float64Array,
  steadyLoad: number,
  emptyLevel: number,
  rateHz: number,
  settings: Settings,
): readonly SampleSpan[] {
  if (steadyLoad === 0) return [];
  const band = settings.quietBandFraction * (steadyLoad - emptyLevel);
  const all = { start: 0, end: smooth.length };
  // The running mean leaves the band only after the movement began: step back as for an onset.
  const back = Math.round(settings.onsetBackSeconds * rateHz);
  return spansWithin(smooth, all, steadyLoad, settings.quietWideBands * band)
    .flatMap((wide) => spansWithin(smooth, wide, levelOf(smooth, wide), band))
    .map((span) => ({
      start: span.start === 0 ? 0 : span.start + back,
      end: span.end === smooth.length ? span.end : span.end - back,
    }))
    .filter((span) => span.end - span.start >= settings.weighingMinimumSeconds * rateHz);
}

/**
 * The level of a stretch is the median of this many of its values, evenly spread. No setting: it spares time; a median
 * of more says the same.
 */
const levelValues = 101;

function spansWithin(smooth: Float64Array, inside: SampleSpan, level: number, band: number): readonly SampleSpan[] {
  const spans: SampleSpan[] = [];
  const { end } = inside;
  let start = -1;
  for (let index = inside.start; index <= end; index += 1) {
    const within = index < end && Math.abs(smooth[index]! - level) <= band;
    if (within && start < 0) start = index;
    if (within || start < 0) continue;
    spans.push({ start, end: index });
    start = -1;
  }
  return spans;
}

function levelOf(smooth: Float64Array, span: SampleSpan): number {
  const count = Math.min(levelValues, span.end - span.start);
  const step = (span.end - span.start) / count;
  const values = new Float64Array(count);
  for (let index = 0; index < count; index += 1) values[index] = smooth[span.start + Math.floor(index * step)]!;
  return values.sort()[count >> 1]!;
}
