import type { Settings } from "../../core/settings.ts";
import { deviationOf, lastTime, meanOf, medianOf, type PlainForce, reversed } from "./plain-curve.ts";

/** A run of samples, both ends included. */
export interface PlainRun {
  readonly first: number;
  readonly last: number;
}

/**
 * Runs of samples in which the plate is empty (METHODS §1): below the larger of 20 N and 5 % of the standing load,
 * loaded again only above that, empty again only below half of it. Trials of the oracle carry one athlete, so the
 * median of the loaded samples stands for "the largest steady load".
 */
export function emptyRuns(force: PlainForce, settings: Settings): PlainRun[] {
  const load = medianOf(force.samples.filter((value) => value > settings.emptyMinimumNewtons));
  const high = Math.max(settings.emptyMinimumNewtons, settings.emptyLoadFraction * load);
  const low = settings.emptyHysteresisFraction * high;
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

/** Empty runs with load on both sides that last as long as a flight can. */
export function flightRuns(force: PlainForce, settings: Settings): PlainRun[] {
  return emptyRuns(force, settings).filter((run) => {
    const seconds = (run.last - run.first + 1) / force.rateHz;
    const between = run.first > 0 && run.last < force.samples.length - 1;
    return between && seconds >= settings.flightMinimumSeconds && seconds <= settings.flightMaximumSeconds;
  });
}

/** Samples of the middle half of a run. */
export function middleHalf(force: PlainForce, run: PlainRun): number[] {
  const quarter = (run.last - run.first) / 4;
  const inside: number[] = [];
  for (let index = run.first; index <= run.last; index++) {
    if (index >= run.first + quarter && index <= run.last - quarter) inside.push(force.samples[index]!);
  }
  return inside;
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
    const following: number[] = [];
    for (let later = index + 1; later / rateHz <= crossing + settings.contactHoldSeconds; later++) {
      if (later < samples.length) following.push(samples[later]!);
    }
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
