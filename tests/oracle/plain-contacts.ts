import type { Settings } from "../../core/settings/settings.ts";
import {
  deviationOf,
  lastTime,
  meanAndDeviationOf,
  meanOf,
  medianOf,
  type PlainForce,
  reversed,
  sumOf,
} from "./plain-curve.ts";

/** A run of samples, both ends included. */
export interface PlainRun {
  readonly first: number;
  readonly last: number;
}

/** Found once a curve: every second of it is looked at. */
const knownLoads = new WeakMap<PlainForce, number>();

/** The standing load (METHODS §1: "the largest steady load"; one athlete a trial): mean of the steadiest loaded second. */
export function standingLoad(force: PlainForce, settings: Settings): number {
  const known = knownLoads.get(force);
  if (known !== undefined) return known;
  const count = Math.round(settings.weighingSeconds * force.rateHz);
  let best = { deviation: Number.POSITIVE_INFINITY, mean: 0 };
  for (let start = 0; start + count <= force.samples.length; start++) {
    const { mean, deviation } = meanAndDeviationOf(force.samples, start, count);
    if (mean < settings.bodyMassMinimumKg * settings.gravity) continue;
    if (deviation < best.deviation) best = { deviation, mean };
  }
  knownLoads.set(force, best.mean);
  return best.mean;
}

/**
 * Runs of samples in which the plate is empty (METHODS §1): below the larger of 20 N and 5 % of the standing load,
 * loaded again only above that, empty again only below half of it. METHODS leaves open what the newtons are counted from:
 * here from the lowest 50 ms mean of the recording, the plate's zero before any was removed.
 */
export function emptyRuns(force: PlainForce, settings: Settings): PlainRun[] {
  const level = lowestLevel(force, settings);
  const threshold = Math.max(
    settings.emptyMinimumNewtons,
    settings.emptyLoadFraction * (standingLoad(force, settings) - level),
  );
  const high = level + threshold;
  const low = level + settings.emptyHysteresisFraction * threshold;
  const runs: PlainRun[] = [];
  let start = force.samples[0]! < high ? 0 : -1;
  for (let index = 1; index < force.samples.length; index++) {
    const value = force.samples[index]!;
    if (start < 0 && value < low) start = index;
    if (start >= 0 && value > high) {
      runs.push({ first: start, last: index - 1 });
      start = -1;
    }
  }
  if (start >= 0) runs.push({ first: start, last: force.samples.length - 1 });
  return runs;
}

/** The lowest mean over 50 ms, each around a sample. */
function lowestLevel(force: PlainForce, settings: Settings): number {
  const half = Math.floor(Math.round(settings.quietBlockSeconds * force.rateHz) / 2);
  let lowest = Number.POSITIVE_INFINITY;
  for (let index = 0; index < force.samples.length; index++) {
    lowest = Math.min(lowest, meanOf(force.samples.slice(Math.max(0, index - half), index + half + 1)));
  }
  return lowest;
}

/** Empty runs with load on both sides that last as long as a flight can. */
export function flightRuns(force: PlainForce, settings: Settings): PlainRun[] {
  return emptyRuns(force, settings).filter((run) => {
    const seconds = (run.last - run.first + 1) / force.rateHz;
    const between = run.first > 0 && run.last < force.samples.length - 1;
    return between && seconds >= settings.flightMinimumSeconds && seconds <= settings.flightMaximumSeconds;
  });
}

/**
 * Samples of the middle half of a run. METHODS leaves open how a half of an odd number of samples is rounded: here down,
 * and the rest that cannot be divided evenly follows it.
 */
function middleHalf(force: PlainForce, run: PlainRun): number[] {
  const length = run.last - run.first + 1;
  const half = Math.floor(length / 2);
  const start = run.first + Math.floor((length - half) / 2);
  return force.samples.slice(start, start + half);
}

/**
 * The plates with their zero removed (METHODS §1): each plate's mean over the longest empty run, a quarter of the run
 * left out at each end because plates ring.
 */
export function withoutZero(plates: readonly PlainForce[], settings: Settings): PlainForce[] {
  let longest = { first: 0, last: -1 };
  for (const run of emptyRuns(sumOf(plates), settings)) {
    const quarter = Math.floor((run.last - run.first + 1) / 4);
    const inner = { first: run.first + quarter, last: run.last - quarter };
    if (inner.last - inner.first > longest.last - longest.first) longest = inner;
  }
  if (longest.last < longest.first) return [...plates];
  return plates.map((plate) => {
    const zero = meanOf(plate.samples.slice(longest.first, longest.last + 1));
    return { rateHz: plate.rateHz, samples: plate.samples.map((value) => value - zero) };
  });
}

/** What an empty plate reads, and what counts as contact (METHODS §3). */
export interface PlainThreshold {
  readonly emptyLevel: number;
  readonly newtons: number;
}

export function contactThreshold(force: PlainForce, flight: PlainRun, settings: Settings): PlainThreshold {
  const empty = middleHalf(force, flight);
  const emptyLevel = meanOf(empty);
  const above = Math.max(settings.contactSd * deviationOf(empty), settings.contactMinimumNewtons);
  return { emptyLevel, newtons: emptyLevel + above };
}

/**
 * Take-off before an empty run: the first downward crossing of the threshold whose next 30 ms have mean and median
 * below it, carried to the empty level (METHODS §3). The search begins at the last sample before the run that carries
 * `surelyLoadedNewtons`.
 */
export function takeoffBefore(
  force: PlainForce,
  run: PlainRun,
  threshold: PlainThreshold,
  weight: number,
  surelyLoadedNewtons: number,
  settings: Settings,
): number | undefined {
  const { samples, rateHz } = force;
  let start = run.first;
  while (start > 0 && samples[start]! < surelyLoadedNewtons) start--;
  for (let index = start; index <= run.last; index++) {
    const here = samples[index]!;
    const next = samples[index + 1]!;
    if (!(here >= threshold.newtons && next < threshold.newtons)) continue;
    const crossing = (index + (here - threshold.newtons) / (here - next)) / rateHz;
    const following = samples.slice(index + 1, index + 1 + Math.round(settings.contactHoldSeconds * rateHz));
    if (meanOf(following) >= threshold.newtons || medianOf(following) >= threshold.newtons) continue;
    return crossing + carrySeconds(force, index, crossing, threshold, weight, settings);
  }
  return undefined;
}

/** Touchdown after an empty run: take-off of the same force with time running backwards. */
export function touchdownAfter(
  force: PlainForce,
  run: PlainRun,
  threshold: PlainThreshold,
  weight: number,
  surelyLoadedNewtons: number,
  settings: Settings,
): number | undefined {
  const end = force.samples.length - 1;
  const mirrored = { first: end - run.last, last: end - run.first };
  const time = takeoffBefore(reversed(force), mirrored, threshold, weight, surelyLoadedNewtons, settings);
  return time === undefined ? undefined : lastTime(force) - time;
}

/** How far beyond the crossing the line through the last loaded samples reaches the empty level: 0 to 1.5 ms. */
function carrySeconds(
  force: PlainForce,
  lastLoaded: number,
  crossing: number,
  threshold: PlainThreshold,
  weight: number,
  settings: Settings,
): number {
  if (force.rateHz < settings.contactCarryRateHz) return 0;
  const top = threshold.newtons + settings.contactCarryWeightFraction * weight;
  let points: { time: number; value: number }[] = [];
  for (let index = lastLoaded; index >= 0; index--) {
    const value = force.samples[index]!;
    if (value < threshold.newtons || value > top) break;
    points.push({ time: index / force.rateHz, value });
  }
  if (points.length < 2) {
    points = [lastLoaded, lastLoaded - 1].map((index) => ({
      time: index / force.rateHz,
      value: force.samples[index]!,
    }));
  }
  const meanTime = meanOf(points.map((point) => point.time));
  const meanValue = meanOf(points.map((point) => point.value));
  let products = 0;
  let squares = 0;
  for (const { time, value } of points) {
    products += (time - meanTime) * (value - meanValue);
    squares += (time - meanTime) ** 2;
  }
  const slope = products / squares;
  if (slope >= 0) return 0;
  const reached = meanTime + (threshold.emptyLevel - meanValue) / slope;
  return Math.min(Math.max(reached - crossing, 0), settings.contactCarrySeconds);
}
