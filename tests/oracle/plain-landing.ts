import type { Limb } from "../../core/ground/limb.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { forceAt, impulseBetween, knotsBetween, largestBetween, type PlainForce } from "./plain-curve.ts";
import { plainLowPass } from "./plain-filter.ts";
import type { PlainMeasure } from "./plain-values.ts";

/**
 * Landing measures of one curve from its own touchdown to the landing's end (METHODS §5). `level` is the body weight
 * this curve is held to: all of it for the body.
 */
export function landingMeasures(
  force: PlainForce,
  side: Limb,
  touchdown: number,
  landingEnd: number,
  level: number,
  settings: Settings,
): PlainMeasure[] {
  const peak = largestBetween(force, touchdown, landingEnd);
  const measures: PlainMeasure[] = [
    { id: "peakLandingForce", side, value: peak.value },
    { id: "timeToPeakLandingForce", side, value: peak.time - touchdown },
    { id: "landingImpulse", side, value: impulseBetween(force, touchdown, landingEnd) },
  ];
  const first = firstPeak(force, touchdown, landingEnd, level, settings.firstPeakProminenceFraction * level);
  if (first !== undefined) {
    const slope = (forceAt(force, first) - forceAt(force, touchdown)) / (first - touchdown);
    measures.push({ id: "loadingRate", side, value: slope });
  }
  return measures;
}

/**
 * The part of body weight that the first landing peak of one limb of a two-leg landing is held to. METHODS says 1 W and
 * 0.1 W "per side from each limb's own touchdown" and leaves open whether a limb is held to half of both.
 */
export const limbLandingShare = 0.5;

/**
 * First local maximum that reaches a height and stands out by a prominence: above the lowest force since touchdown, and
 * above the lowest force before something higher comes (or the landing ends).
 */
function firstPeak(
  force: PlainForce,
  touchdown: number,
  landingEnd: number,
  height: number,
  prominence: number,
): number | undefined {
  const knots = knotsBetween(force.rateHz, touchdown, landingEnd);
  const values = knots.map((time) => forceAt(force, time));
  for (let index = 1; index + 1 < knots.length; index++) {
    const value = values[index]!;
    if (value < height || !(value > values[index - 1]! && value >= values[index + 1]!)) continue;
    const before = Math.min(...values.slice(0, index));
    let after = value;
    for (let later = index + 1; later < values.length && values[later]! <= value; later++) {
      after = Math.min(after, values[later]!);
    }
    if (value - Math.max(before, after) >= prominence) return knots[index];
  }
  return undefined;
}

/**
 * Touchdown to the start of the first second in which the force, low-passed at 20 Hz, stays within 5 % of body weight.
 * Absent with less than three seconds of recording after touchdown, or where no such second is recorded. METHODS leaves
 * open what is filtered and where a second begins: here the samples from touchdown on, and at a sample.
 */
export function timeToStabilisation(
  force: PlainForce,
  touchdown: number,
  weight: number,
  settings: Settings,
): number | undefined {
  const { rateHz, samples } = force;
  const first = Math.ceil(touchdown * rateHz);
  if (samples.length / rateHz - touchdown < settings.stabilisationNeedsSeconds) return undefined;
  const smooth = plainLowPass(samples.slice(first), rateHz, settings.stabilisationFilterHz);
  const band = settings.stabilisationBandFraction * weight;
  const count = Math.round(settings.stabilisationSeconds * rateHz);
  for (let start = 0; start + count <= smooth.length; start++) {
    const second = smooth.slice(start, start + count);
    if (second.every((value) => Math.abs(value - weight) <= band)) return (first + start) / rateHz - touchdown;
  }
  return undefined;
}
