import type { Side } from "../../core/ground/limb.ts";
import type { Settings } from "../../core/settings/settings.ts";
import {
  contactThreshold,
  emptyRuns,
  flightRuns,
  type PlainRun,
  takeoffBefore,
  touchdownAfter,
} from "./plain-contacts.ts";
import { type PlainForce, sumOf } from "./plain-curve.ts";
import { landingMeasures, limbLandingShare, timeToStabilisation } from "./plain-landing.ts";
import {
  firstRiseThroughZero,
  motionQuietBetween,
  placedAtZero,
  placedAtZeroBetween,
  positionAt,
  velocityAt,
  withVelocityAt,
} from "./plain-motion.ts";
import { limbNetImpulses, netImpulse, pushForces, pushOfTheBody } from "./plain-phases.ts";
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
import { weighingSecond } from "./plain-weighing.ts";

/** A drop jump after METHODS alone: empty, contact, flight, landing and quiet standing at the end. */
export function plainDropJump(trial: PlainTrial, settings: Settings): PlainResult {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const flight = flightRuns(whole, settings).at(-1)!;
  const emptyBefore = emptyRuns(whole, settings).findLast((run) => run.last < flight.first)!;
  const after = weighingSecond(
    whole,
    quietRuns(whole, flight.last + 1, whole.samples.length - 1, settings),
    settings,
    "after the movement",
  );
  const weight = trial.massKg === undefined ? after!.mean : trial.massKg * gravity;
  const mass = weight / gravity;

  const threshold = contactThreshold(whole, flight, settings);
  const touchdown = touchdownAfter(whole, emptyBefore, threshold, weight, weight, settings)!;
  const takeoff = takeoffBefore(whole, flight, threshold, weight, weight, settings)!;
  const secondTouchdown = touchdownAfter(whole, flight, threshold, weight, weight, settings)!;
  const flightTime = secondTouchdown - takeoff;
  // Backward integration: velocity and position are zero in the final quiet standing. Where none was recorded, velocity
  // is g·t/2 at take-off (so at touchdown less the net impulse of the contact over mass), position zero at touchdown.
  const motion =
    after === undefined
      ? placedAtZero(
          withVelocityAt(motionQuietBetween(whole, weight, mass, 0, takeoff), takeoff, (gravity * flightTime) / 2),
          touchdown,
        )
      : placedAtZeroBetween(motionQuietBetween(whole, weight, mass, after.from, after.to), after.from, after.to);
  const lowestPosition = firstRiseThroughZero(motion, touchdown)!;
  const landingEnd = firstRiseThroughZero(motion, secondTouchdown)!;
  const events: PlainEvent[] = [
    { name: "touchdown", contactIndex: 1, time: touchdown },
    { name: "lowestPosition", time: lowestPosition },
    { name: "takeoff", time: takeoff },
    { name: "touchdown", contactIndex: 2, time: secondTouchdown },
    { name: "landingEnd", time: landingEnd },
  ];

  const braking = { from: touchdown, to: lowestPosition };
  const propulsion = { from: lowestPosition, to: takeoff };
  const heightByFlight = (gravity * flightTime ** 2) / 8;
  const takeoffVelocity = velocityAt(motion, takeoff);
  const touchdownVelocity = velocityAt(motion, touchdown);
  const heightByImpulse = takeoffVelocity ** 2 / (2 * gravity);
  const effective = touchdownVelocity ** 2 / (2 * gravity);
  // Without backward integration: take-off at g·t/2, and back over the contact by its net impulse.
  const contact = { from: touchdown, to: takeoff };
  const slower = (gravity * flightTime) / 2 - netImpulse(whole, contact, weight) / mass;
  const byFlightTime = slower ** 2 / (2 * gravity);
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures: PlainMeasure[] = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("contactTime", takeoff - touchdown),
    of("flightTime", flightTime),
    of("jumpHeightFlightTime", heightByFlight),
    of("reactiveStrengthIndex", heightByFlight / (takeoff - touchdown)),
    of("dropHeightEffective", effective),
    of("dropHeightByFlightTime", byFlightTime),
    ...pushOfTheBody(motion, side, braking, propulsion),
    ...pushForces(whole, side, braking, propulsion),
    ...landingMeasures(whole, side, secondTouchdown, landingEnd, weight, settings),
  ];
  // g·t/2 instead of backward integration would be the flight-time height under another name (METHODS §5).
  if (after !== undefined) {
    measures.push(
      of("takeoffVelocity", takeoffVelocity),
      of("jumpHeightImpulse", heightByImpulse),
      of("jumpHeightFromStanding", heightByImpulse + positionAt(motion, takeoff)),
      // Both ways to the drop height are shown where both are possible.
      of("dropHeightDifference", effective - byFlightTime),
    );
  }
  const stable = timeToStabilisation(whole, secondTouchdown, weight, settings);
  if (stable !== undefined) measures.push(of("timeToStabilisation", stable));
  addLimbs(
    limbsOf(plates, side),
    { emptyBefore, flight },
    { braking, propulsion, landingEnd, weight },
    events,
    measures,
    settings,
  );
  return { events, measures: withBodySizes(measures, weight, mass) };
}

function addLimbs(
  limbs: readonly { readonly side: Side; readonly force: PlainForce }[],
  runs: { emptyBefore: PlainRun; flight: PlainRun },
  body: {
    braking: { from: number; to: number };
    propulsion: { from: number; to: number };
    landingEnd: number;
    weight: number;
  },
  events: PlainEvent[],
  measures: PlainMeasure[],
  settings: Settings,
): void {
  const { weight } = body;
  const contacts = new Map<string, { touchdown: number; takeoff: number }>();
  for (const { side, force } of limbs) {
    const threshold = contactThreshold(force, runs.flight, settings);
    const sure = weight / 4;
    const first = touchdownAfter(force, runs.emptyBefore, threshold, weight, sure, settings)!;
    const takeoff = takeoffBefore(force, runs.flight, threshold, weight, sure, settings)!;
    const second = touchdownAfter(force, runs.flight, threshold, weight, sure, settings)!;
    contacts.set(side, { touchdown: second, takeoff });
    events.push(
      { name: "touchdown", side, contactIndex: 1, time: first },
      { name: "takeoff", side, time: takeoff },
      { name: "touchdown", side, contactIndex: 2, time: second },
    );
    measures.push(
      ...pushForces(force, side, body.braking, body.propulsion),
      ...limbNetImpulses(force, side, body.braking, body.propulsion, weight),
      ...landingMeasures(force, side, second, body.landingEnd, weight * limbLandingShare, settings),
    );
  }
  const left = contacts.get("left");
  const right = contacts.get("right");
  if (left === undefined || right === undefined) return;
  // METHODS leaves open which touchdown of a drop jump: here that of the landing, as for its other landing measures.
  measures.push(
    { id: "limbTouchdownDifference", side: "both", value: right.touchdown - left.touchdown },
    { id: "limbTakeoffDifference", side: "both", value: right.takeoff - left.takeoff },
  );
}
