import { integralNoise } from "../events/integral-noise.ts";
import { velocityAt } from "../events/kinematics.ts";
import { velocityNoise } from "../events/velocity-noise.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { integrateForce } from "../trial/force-signal.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";

/**
 * Contact time, reactive strength index and effective drop heights (METHODS §5): of a drop jump from the touchdown of
 * its contact, of a drop landing from the touchdown of the landing.
 */
export function measureContact(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { jump, limb: side } = context;
  const { motion, anchor, events, test } = jump;
  const { contactTouchdown, takeoff, touchdown } = events;
  const fallen = testFacts(test).flights === "none" ? touchdown : contactTouchdown;
  if (fallen === undefined) return [];
  const { gravity } = motion;
  const { rateHz } = motion.signal;
  const velocity = velocityAt(motion, fallen);
  const effective = (velocity * velocity) / (2 * gravity);
  const effectiveNoise = (Math.abs(velocity) * velocityNoise(jump, context.noiseNewtons, fallen)) / gravity;
  const measures: RawMeasure[] = [{ id: "dropHeightEffective", side, value: effective, noise: effectiveNoise }];
  if (contactTouchdown === undefined || takeoff === undefined) return measures;

  const contactTime = (takeoff - contactTouchdown) / rateHz;
  measures.push({ id: "contactTime", side, value: contactTime, noise: 0 });
  if (touchdown === undefined) return measures;
  const flightTime = (touchdown - takeoff) / rateHz;
  const height = (gravity * flightTime * flightTime) / 8;
  measures.push({ id: "reactiveStrengthIndex", side, value: height / contactTime, noise: 0 });

  // The same drop with the take-off velocity of the flight time, which quiet standing has no part in.
  const massKg = motion.weightNewtons / gravity;
  const netImpulse = integrateForce(motion.signal, contactTouchdown, takeoff) - motion.weightNewtons * contactTime;
  const byFlight = (gravity * flightTime) / 2 - netImpulse / massKg;
  const impulseNoise = integralNoise(context.noiseNewtons, takeoff - contactTouchdown, rateHz) / massKg;
  const value = (byFlight * byFlight) / (2 * gravity);
  const noise = (Math.abs(byFlight) * Math.hypot(impulseNoise, settings.flightVelocityUncertainty)) / gravity;
  measures.push({ id: "dropHeightByFlightTime", side, value, noise });
  if (anchor.kind === "still") {
    measures.push({
      id: "dropHeightDifference",
      side,
      value: effective - value,
      noise: Math.hypot(effectiveNoise, noise),
    });
  }
  return measures;
}
