import { positionAt, velocityAt } from "../events/kinematics.ts";
import { integralNoise, type MeasureContext, type RawMeasure } from "./raw-measure.ts";

/** Heights, velocity, times and depth of the whole jump (METHODS §5). */
export function measureWholeJump(context: MeasureContext): RawMeasure[] {
  const { jump, limb: side, noiseNewtons } = context;
  const { motion, events } = jump;
  const { rateHz } = motion.signal;
  const gravity = motion.gravity;
  const massKg = motion.weightNewtons / gravity;

  const velocity = velocityAt(motion, events.takeoff);
  const velocityNoise = integralNoise(noiseNewtons, events.takeoff - motion.startSample, rateHz) / massKg;
  const height = (velocity * velocity) / (2 * gravity);
  const heightNoise = (velocity * velocityNoise) / gravity;
  const timeToTakeoff = (events.takeoff - events.onset) / rateHz;
  const measures: RawMeasure[] = [
    { id: "jumpHeightImpulse", side, value: height, noise: heightNoise },
    {
      id: "jumpHeightFromStanding",
      side,
      value: height + positionAt(motion, events.takeoff),
      noise: heightNoise,
    },
    { id: "takeoffVelocity", side, value: velocity, noise: velocityNoise },
    { id: "reactiveStrengthIndexModified", side, value: height / timeToTakeoff, noise: heightNoise / timeToTakeoff },
    { id: "timeToTakeoff", side, value: timeToTakeoff, noise: 0 },
    { id: "countermovementDepth", side, value: -positionAt(motion, events.lowestPosition), noise: 0 },
    { id: "bodyWeight", side, value: motion.weightNewtons, noise: 0 },
    { id: "bodyMass", side, value: massKg, noise: 0 },
  ];
  if (events.touchdown !== undefined) {
    const flightTime = (events.touchdown - events.takeoff) / rateHz;
    measures.push(
      { id: "flightTime", side, value: flightTime, noise: 0 },
      { id: "jumpHeightFlightTime", side, value: (gravity * flightTime * flightTime) / 8, noise: 0 },
    );
  }
  measures.push(...limbDifference(context, "takeoff", "limbTakeoffDifference"));
  measures.push(...limbDifference(context, "touchdown", "limbTouchdownDifference"));
  return measures;
}

function limbDifference(context: MeasureContext, event: "takeoff" | "touchdown", id: string): RawMeasure[] {
  const right = context.jump.contacts.find((contact) => contact.side === "right")?.[event];
  const left = context.jump.contacts.find((contact) => contact.side === "left")?.[event];
  if (right === undefined || left === undefined) return [];
  return [{ id, side: "both", value: (right - left) / context.jump.motion.signal.rateHz, noise: 0 }];
}
