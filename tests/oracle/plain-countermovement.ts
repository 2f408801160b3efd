import type { Settings } from "../../core/settings/settings.ts";
import { contactThreshold, flightRuns, takeoffBefore, touchdownAfter } from "./plain-contacts.ts";
import { forceAt, type PlainForce, sumOf } from "./plain-curve.ts";
import { landingMeasures, timeToStabilisation } from "./plain-landing.ts";
import { addLimbsOfJump } from "./plain-limbs.ts";
import {
  firstRiseThroughZero,
  motionQuietBetween,
  type PlainMotion,
  placedAtZero,
  positionAt,
  velocityAt,
} from "./plain-motion.ts";
import { netImpulse, pushForces, pushOfTheBody } from "./plain-phases.ts";
import { quietRuns } from "./plain-quiet.ts";
import {
  limbsOf,
  type PlainEvent,
  type PlainMeasure,
  type PlainResult,
  type PlainTrial,
  withBodySizes,
  zeroedPlates,
} from "./plain-values.ts";
import { balancedWeight, weighingSecond } from "./plain-weighing.ts";

/** A countermovement jump after METHODS alone, for a recording that holds one jump between two quiet standings. */
export function plainCountermovementJump(trial: PlainTrial, settings: Settings): PlainResult {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const flight = flightRuns(whole, settings)[0]!;

  // Weight: the steadiest second before, the steadiest second after, and the momentum balance between them.
  const before = weighingSecond(whole, quietRuns(whole, 0, flight.first, settings), settings, "before the movement")!;
  const after = weighingSecond(
    whole,
    quietRuns(whole, flight.last + 1, whole.samples.length - 1, settings),
    settings,
    "after the movement",
  );
  const weight = after === undefined ? before.mean : balancedWeight(whole, before, after);
  const mass = weight / gravity;
  const moving = motionQuietBetween(whole, weight, mass, before.from, before.to);

  // Events of the body.
  const threshold = contactThreshold(whole, flight, settings);
  const takeoff = takeoffBefore(whole, flight, threshold, weight, weight, settings)!;
  const touchdown = touchdownAfter(whole, flight, threshold, weight, weight, settings)!;
  const endOfUnweighting = mostNegativeVelocity(moving, before.to, takeoff);
  const onset = onsetBefore(whole, endOfUnweighting, weight, before.deviation, settings);
  const motion = placedAtZero(moving, onset);
  const lowestPosition = firstRiseThroughZero(motion, endOfUnweighting)!;
  const landingEnd = firstRiseThroughZero(motion, touchdown)!;
  const events: PlainEvent[] = [
    { name: "onset", time: onset },
    { name: "endOfUnweighting", time: endOfUnweighting },
    { name: "lowestPosition", time: lowestPosition },
    { name: "takeoff", time: takeoff },
    { name: "touchdown", time: touchdown },
    { name: "landingEnd", time: landingEnd },
  ];

  // The whole jump.
  const braking = { from: endOfUnweighting, to: lowestPosition };
  const propulsion = { from: lowestPosition, to: takeoff };
  const takeoffVelocity = velocityAt(motion, takeoff);
  const height = takeoffVelocity ** 2 / (2 * gravity);
  const flightTime = touchdown - takeoff;
  const forceLowest = forceAt(whole, lowestPosition);
  const forceEndOfUnweighting = forceAt(whole, endOfUnweighting);
  const descent = positionAt(motion, endOfUnweighting) - positionAt(motion, lowestPosition);
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures: PlainMeasure[] = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("takeoffVelocity", takeoffVelocity),
    of("jumpHeightImpulse", height),
    of("jumpHeightFlightTime", (gravity * flightTime ** 2) / 8),
    of("jumpHeightFromStanding", height + positionAt(motion, takeoff)),
    of("flightTime", flightTime),
    of("timeToTakeoff", takeoff - onset),
    of("reactiveStrengthIndexModified", height / (takeoff - onset)),
    of("countermovementDepth", -positionAt(motion, lowestPosition)),
    of("unweightingTime", endOfUnweighting - onset),
    of("unweightingNetImpulse", netImpulse(whole, { from: onset, to: endOfUnweighting }, weight)),
    of("brakingRateOfForceDevelopment", (forceLowest - forceEndOfUnweighting) / (braking.to - braking.from)),
    of("verticalStiffnessBraking", (forceLowest - weight) / descent),
    ...pushOfTheBody(motion, side, braking, propulsion),
    ...pushForces(whole, side, braking, propulsion),
    ...landingMeasures(whole, side, touchdown, landingEnd, weight, settings),
  ];
  const stable = timeToStabilisation(whole, touchdown, weight, settings);
  if (stable !== undefined) measures.push(of("timeToStabilisation", stable));

  addLimbsOfJump(
    limbsOf(plates, side),
    flight,
    { braking, propulsion, landingEnd, weight },
    events,
    measures,
    settings,
  );
  return { events, measures: withBodySizes(measures, weight, mass) };
}

/** F returns to W after the dip: of all rises through W before take-off, the one with the most negative velocity. */
function mostNegativeVelocity(motion: PlainMotion, from: number, takeoff: number): number {
  const { samples, rateHz } = motion.force;
  let best = { time: Number.NaN, velocity: Number.POSITIVE_INFINITY };
  for (let index = Math.ceil(from * rateHz); (index + 1) / rateHz < takeoff; index++) {
    const here = samples[index]! - motion.weight;
    const next = samples[index + 1]! - motion.weight;
    if (!(here < 0 && next >= 0)) continue;
    const time = (index + here / (here - next)) / rateHz;
    const velocity = velocityAt(motion, time);
    if (velocity < best.velocity) best = { time, velocity };
  }
  return best.time;
}

/** Backwards from the unweighting minimum to the last instant within the band around W, and 30 ms more (METHODS §3). */
function onsetBefore(
  force: PlainForce,
  endOfUnweighting: number,
  weight: number,
  deviation: number,
  settings: Settings,
): number {
  const { samples, rateHz } = force;
  let minimum = Math.floor(endOfUnweighting * rateHz);
  for (let index = minimum; index >= 0 && index / rateHz >= endOfUnweighting - settings.dipSearchSeconds; index--) {
    if (samples[index]! < samples[minimum]!) minimum = index;
  }
  const edge = weight - Math.max(settings.onsetSd * deviation, settings.onsetWeightFraction * weight);
  for (let index = minimum; index > 0; index--) {
    const here = samples[index]!;
    const before = samples[index - 1]!;
    if (before >= edge && here < edge) {
      return (index - 1 + (before - edge) / (before - here)) / rateHz - settings.onsetBackSeconds;
    }
  }
  return Number.NaN;
}
