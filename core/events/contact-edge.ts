import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, meanAndDeviation } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { edgeLine } from "./edge-line.ts";

/** The empty plate as seen in a flight: what contact thresholds are counted from. */
export interface EmptyLevel {
  readonly newtons: number;
  /** Standard deviation of the empty plate, newtons. */
  readonly deviation: number;
}

/** Level and noise of a plate from the middle half of a flight, at least 50 ms of it. */
export function emptyLevel(signal: ForceSignal, flight: SampleSpan, settings: Settings): EmptyLevel {
  const length = flight.end - flight.start;
  const middle = Math.max(
    Math.floor(length / 2),
    Math.min(length, Math.ceil(settings.flightMiddleSeconds * signal.rateHz)),
  );
  const start = flight.start + Math.floor((length - middle) / 2);
  const { mean, deviation } = meanAndDeviation(signal.force, start, start + middle);
  return { newtons: mean, deviation };
}

/** Threshold above which a plate counts as touched, newtons. */
export function contactThreshold(empty: EmptyLevel, settings: Settings): number {
  return empty.newtons + Math.max(settings.contactSd * empty.deviation, settings.contactMinimumNewtons);
}

/**
 * The instant a plate is left (direction 1, searched forwards from the push) or touched (direction −1, searched
 * backwards from the landing): the first crossing of the threshold after which the plate stays empty for the hold time
 * in mean and median, carried outwards to the empty level (METHODS §3).
 *
 * @param from sample inside the contact at which the search starts
 * @param limit last sample the search may reach
 * @returns fractional sample, or undefined when there is no such crossing.
 */
export function contactEdge(
  signal: ForceSignal,
  from: number,
  limit: number,
  direction: 1 | -1,
  empty: EmptyLevel,
  weightNewtons: number,
  settings: Settings,
): number | undefined {
  const { force, rateHz } = signal;
  const threshold = contactThreshold(empty, settings);
  const hold = Math.max(1, Math.round(settings.contactHoldSeconds * rateHz));
  // Not until it is equal to the limit: a search that starts beyond it, or nowhere, ends at once.
  for (let loaded = from; (limit - loaded) * direction > 0; loaded += direction) {
    const here = force[loaded]!;
    const next = force[loaded + direction]!;
    if (here < threshold || next >= threshold) continue;
    if (!staysEmpty(force, loaded + direction, hold, direction, threshold)) continue;
    const crossing = loaded + (direction * (here - threshold)) / (here - next);
    if (rateHz < settings.contactCarryRateHz) return crossing;
    return carry(force, loaded, crossing, direction, threshold, empty.newtons, weightNewtons, rateHz, settings);
  }
  return undefined;
}

function staysEmpty(force: Float64Array, first: number, hold: number, direction: 1 | -1, threshold: number): boolean {
  const held: number[] = [];
  let sum = 0;
  for (let step = 0; step < hold; step += 1) {
    const value = force[first + direction * step];
    if (value === undefined) break;
    held.push(value);
    sum += value;
  }
  if (held.length === 0 || sum / held.length >= threshold) return false;
  held.sort((a, b) => a - b);
  const middle = held.length >> 1;
  const median = held.length % 2 === 1 ? held[middle]! : (held[middle - 1]! + held[middle]!) / 2;
  return median < threshold;
}

/** Carries a crossing along the line through the last loaded samples to the empty level, outwards only. */
function carry(
  force: Float64Array,
  loaded: number,
  crossing: number,
  direction: 1 | -1,
  threshold: number,
  emptyNewtons: number,
  weightNewtons: number,
  rateHz: number,
  settings: Settings,
): number {
  const top = threshold + settings.contactCarryWeightFraction * weightNewtons;
  const line = edgeLine(force, loaded, direction, threshold, top);
  if (line === undefined || line.slope <= 0) return crossing;
  const edge = loaded + direction * ((line.intercept - emptyNewtons) / line.slope);
  const outwards = (edge - crossing) * direction;
  const most = settings.contactCarrySeconds * rateHz;
  return crossing + direction * Math.min(most, Math.max(0, outwards));
}
