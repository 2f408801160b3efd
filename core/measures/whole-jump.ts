import { positionAt, velocityAt } from "../events/kinematics.ts";
import { velocityNoise } from "../events/velocity-noise.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { positionNoise } from "./uncertainty/position-noise.ts";

/** Weight, heights, velocity, times and depth of a trial (METHODS §5). */
export function measureWholeJump(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { limb: side, jump } = context;
  const { motion, events } = jump;
  const { rateHz } = motion.signal;
  const { onset, takeoff, touchdown, lowestPosition } = events;
  const measures: RawMeasure[] = [
    { id: "bodyWeight", side, value: motion.weightNewtons, noise: context.zeroNewtons },
    { id: "bodyMass", side, value: motion.weightNewtons / motion.gravity, noise: context.zeroNewtons / motion.gravity },
  ];
  if (takeoff !== undefined) measures.push(...takeoffMeasures(context, takeoff, settings));
  // Position is counted from standing; where only the flight gives the velocity nobody is known to stand.
  if (testFacts(jump.test).turn === "dip" && lowestPosition !== undefined && jump.anchor.kind !== "flight") {
    const noise = positionNoise(context, lowestPosition, settings);
    measures.push({ id: "countermovementDepth", side, value: -positionAt(motion, lowestPosition), noise });
  }
  if (onset !== undefined && takeoff !== undefined) {
    measures.push({ id: "timeToTakeoff", side, value: (takeoff - onset) / rateHz, noise: 0 });
  }
  if (takeoff !== undefined && touchdown !== undefined) {
    const flightTime = (touchdown - takeoff) / rateHz;
    measures.push(
      { id: "flightTime", side, value: flightTime, noise: 0 },
      { id: "jumpHeightFlightTime", side, value: (motion.gravity * flightTime * flightTime) / 8, noise: 0 },
    );
  }
  measures.push(...limbDifference(context, "takeoff", "limbTakeoffDifference"));
  measures.push(...limbDifference(context, "touchdown", "limbTouchdownDifference"));
  return measures;
}

/**
 * What follows from the velocity at take-off. None where that velocity was itself taken from the flight time: it would
 * be the flight-time height under another name.
 */
function takeoffMeasures(context: MeasureContext, takeoff: number, settings: Settings): RawMeasure[] {
  const { limb: side, jump } = context;
  const { motion, anchor, events, test } = jump;
  if (anchor.kind === "flight") return [];
  const { gravity } = motion;
  const velocity = velocityAt(motion, takeoff);
  const noise = velocityNoise(jump, context.noiseNewtons, takeoff);
  // Who does not rise has no height: v²/2g would make one of a fall (a take-off moved into the flight).
  if (velocity <= 0) return [{ id: "takeoffVelocity", side, value: velocity, noise }];
  const height = (velocity * velocity) / (2 * gravity);
  const heightNoise = (velocity * noise) / gravity;
  const measures: RawMeasure[] = [
    { id: "takeoffVelocity", side, value: velocity, noise },
    { id: "jumpHeightImpulse", side, value: height, noise: heightNoise },
  ];
  // The position of a squat jump counts from its hold, not from standing.
  if (testFacts(test).start !== "hold") {
    const value = height + positionAt(motion, takeoff);
    const ofPosition = positionNoise(context, takeoff, settings);
    measures.push({ id: "jumpHeightFromStanding", side, value, noise: Math.hypot(heightNoise, ofPosition) });
  }
  if (events.onset !== undefined) {
    const seconds = (takeoff - events.onset) / motion.signal.rateHz;
    const value = height / seconds;
    measures.push({ id: "reactiveStrengthIndexModified", side, value, noise: heightNoise / seconds });
  }
  return measures;
}

function limbDifference(context: MeasureContext, event: "takeoff" | "touchdown", id: MeasureId): RawMeasure[] {
  const right = context.jump.contacts.find((contact) => contact.side === "right")?.[event];
  const left = context.jump.contacts.find((contact) => contact.side === "left")?.[event];
  if (right === undefined || left === undefined) return [];
  return [{ id, side: "both", value: (right - left) / context.jump.motion.signal.rateHz, noise: 0 }];
}
