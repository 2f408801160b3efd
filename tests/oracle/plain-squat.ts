import type { Settings } from "../../core/settings/settings.ts";
import { contactThreshold, flightRuns, takeoffBefore, touchdownAfter } from "./plain-contacts.ts";
import { type PlainForce, sumOf } from "./plain-curve.ts";
import { landingMeasures, timeToStabilisation } from "./plain-landing.ts";
import { addLimbsOfJump } from "./plain-limbs.ts";
import { firstRiseThroughZero, motionQuietBetween, placedAtZero, velocityAt } from "./plain-motion.ts";
import { pushForces, pushOfTheBody } from "./plain-phases.ts";
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

/**
 * A squat jump after METHODS alone: velocity zero in the hold, onset backwards from the rise, propulsion from onset to
 * take-off (METHODS §4 names phases by the lowest position, which a squat jump holds until its onset).
 */
export function plainSquatJump(trial: PlainTrial, settings: Settings): PlainResult {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const flight = flightRuns(whole, settings)[0]!;
  const before = weighingSecond(whole, quietRuns(whole, 0, flight.first, settings), settings, "before the movement")!;
  const after = weighingSecond(
    whole,
    quietRuns(whole, flight.last + 1, whole.samples.length - 1, settings),
    settings,
    "after the movement",
  );
  const weight = after === undefined ? before.mean : balancedWeight(whole, before, after);
  const mass = weight / gravity;
  // Velocity is zero in the hold, the last quiet stretch before the rise, whichever stretch weighed the athlete.
  const lastQuiet = quietRuns(whole, 0, flight.first, settings).at(-1)!;
  const hold = weighingSecond(whole, [lastQuiet], settings, "before the movement")!;
  const moving = motionQuietBetween(whole, weight, mass, hold.from, hold.to);

  const threshold = contactThreshold(whole, flight, settings);
  const takeoff = takeoffBefore(whole, flight, threshold, weight, weight, settings)!;
  const touchdown = touchdownAfter(whole, flight, threshold, weight, weight, settings)!;
  const onset = onsetOfRise(whole, takeoff, weight, before.deviation, settings);
  const motion = placedAtZero(moving, onset);
  const landingEnd = firstRiseThroughZero(motion, touchdown)!;
  const events: PlainEvent[] = [
    { name: "onset", time: onset },
    { name: "takeoff", time: takeoff },
    { name: "touchdown", time: touchdown },
    { name: "landingEnd", time: landingEnd },
  ];

  const propulsion = { from: onset, to: takeoff };
  const takeoffVelocity = velocityAt(motion, takeoff);
  const height = takeoffVelocity ** 2 / (2 * gravity);
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures: PlainMeasure[] = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("takeoffVelocity", takeoffVelocity),
    of("jumpHeightImpulse", height),
    of("jumpHeightFlightTime", (gravity * (touchdown - takeoff) ** 2) / 8),
    of("flightTime", touchdown - takeoff),
    of("timeToTakeoff", takeoff - onset),
    of("reactiveStrengthIndexModified", height / (takeoff - onset)),
    ...pushOfTheBody(motion, side, undefined, propulsion),
    ...pushForces(whole, side, undefined, propulsion),
    ...landingMeasures(whole, side, touchdown, landingEnd, weight, settings),
  ];
  const stable = timeToStabilisation(whole, touchdown, weight, settings);
  if (stable !== undefined) measures.push(of("timeToStabilisation", stable));
  addLimbsOfJump(
    limbsOf(plates, side),
    flight,
    { braking: undefined, propulsion, landingEnd, weight },
    events,
    measures,
    settings,
  );
  return { events, measures: withBodySizes(measures, weight, mass) };
}

/** Backwards from the largest force of the push to the last instant within the band around W, and 30 ms more. */
function onsetOfRise(
  force: PlainForce,
  takeoff: number,
  weight: number,
  deviation: number,
  settings: Settings,
): number {
  const { samples, rateHz } = force;
  let peak = Math.floor(takeoff * rateHz);
  for (let index = peak; index >= 0; index--) if (samples[index]! > samples[peak]!) peak = index;
  const edge = weight + Math.max(settings.onsetSd * deviation, settings.onsetWeightFraction * weight);
  for (let index = peak; index > 0; index--) {
    const here = samples[index]!;
    const before = samples[index - 1]!;
    if (before <= edge && here > edge) {
      return (index - 1 + (edge - before) / (here - before)) / rateHz - settings.onsetBackSeconds;
    }
  }
  return Number.NaN;
}
