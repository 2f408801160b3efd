import { positionAt } from "../events/kinematics.ts";
import type { MeasureSide } from "../limb.ts";
import { type ForceSignal, forceAt, integrateForce, maximumForce } from "../trial/force-signal.ts";
import { integralNoise, type MeasureContext, type RawMeasure } from "./raw-measure.ts";

/** Impulses, forces and durations of unweighting, braking and propulsion (METHODS §5), from unfiltered force. */
export function measurePhases(context: MeasureContext): RawMeasure[] {
  const { events, motion } = context.jump;
  const { rateHz } = motion.signal;
  const side = context.limb;
  const duration = (from: number, to: number): number => (to - from) / rateHz;
  return [
    { id: "unweightingTime", side, value: duration(events.onset, events.endOfUnweighting), noise: 0 },
    netImpulse(context, "unweightingNetImpulse", events.onset, events.endOfUnweighting),
    { id: "brakingTime", side, value: duration(events.endOfUnweighting, events.lowestPosition), noise: 0 },
    ...limbwise(context, (signal, noise, limbSide) =>
      phaseForces(signal, noise, limbSide, "Braking", events.endOfUnweighting, events.lowestPosition),
    ),
    netImpulse(context, "brakingNetImpulse", events.endOfUnweighting, events.lowestPosition),
    ...limbNetImpulses(context, "brakingLimbNetImpulse", events.endOfUnweighting, events.lowestPosition),
    ...limbwise(context, (signal, noise, limbSide) => [
      { id: "forceAtLowestPosition", side: limbSide, value: forceAt(signal, events.lowestPosition), noise },
    ]),
    ...brakingSlopes(context),
    { id: "propulsionTime", side, value: duration(events.lowestPosition, events.takeoff), noise: 0 },
    ...limbwise(context, (signal, noise, limbSide) =>
      phaseForces(signal, noise, limbSide, "Propulsion", events.lowestPosition, events.takeoff),
    ),
    netImpulse(context, "propulsionNetImpulse", events.lowestPosition, events.takeoff),
    ...limbNetImpulses(context, "propulsionLimbNetImpulse", events.lowestPosition, events.takeoff),
  ];
}

/** The same measure for the total and, on two plates, for each limb. */
export function limbwise(
  context: MeasureContext,
  measure: (signal: ForceSignal, noiseNewtons: number, side: MeasureSide) => RawMeasure[],
): RawMeasure[] {
  return [
    ...measure(context.jump.motion.signal, context.noiseNewtons, context.limb),
    ...context.limbs.flatMap((limb) => measure(limb.signal, limb.noiseNewtons, limb.signal.side)),
  ];
}

function phaseForces(
  signal: ForceSignal,
  noise: number,
  side: MeasureSide,
  phase: "Braking" | "Propulsion",
  from: number,
  to: number,
): RawMeasure[] {
  const impulse = integrateForce(signal, from, to);
  const seconds = (to - from) / signal.rateHz;
  const impulseNoise = integralNoise(noise, to - from, signal.rateHz);
  return [
    { id: phase === "Braking" ? "brakingImpulse" : "propulsionImpulse", side, value: impulse, noise: impulseNoise },
    { id: `peak${phase}Force`, side, value: maximumForce(signal, from, to).newtons, noise },
    { id: `mean${phase}Force`, side, value: impulse / seconds, noise: impulseNoise / seconds },
  ];
}

function netImpulse(context: MeasureContext, id: string, from: number, to: number): RawMeasure {
  const { signal, weightNewtons } = context.jump.motion;
  const value = integrateForce(signal, from, to) - (weightNewtons * (to - from)) / signal.rateHz;
  const noise = integralNoise(context.noiseNewtons, to - from, signal.rateHz);
  return { id, side: context.limb, value, noise };
}

/** Per limb, net of half the body weight (METHODS §5). */
function limbNetImpulses(context: MeasureContext, id: string, from: number, to: number): RawMeasure[] {
  const half = context.jump.motion.weightNewtons / 2;
  return context.limbs.map(({ signal, noiseNewtons }) => ({
    id,
    side: signal.side,
    value: integrateForce(signal, from, to) - (half * (to - from)) / signal.rateHz,
    noise: integralNoise(noiseNewtons, to - from, signal.rateHz),
  }));
}

function brakingSlopes(context: MeasureContext): RawMeasure[] {
  const { events, motion } = context.jump;
  const side = context.limb;
  const seconds = (events.lowestPosition - events.endOfUnweighting) / motion.signal.rateHz;
  const lowest = forceAt(motion.signal, events.lowestPosition);
  const rise = lowest - forceAt(motion.signal, events.endOfUnweighting);
  const descent = positionAt(motion, events.endOfUnweighting) - positionAt(motion, events.lowestPosition);
  const stiffness = (lowest - motion.weightNewtons) / descent;
  return [
    {
      id: "brakingRateOfForceDevelopment",
      side,
      value: rise / seconds,
      noise: (Math.SQRT2 * context.noiseNewtons) / seconds,
    },
    { id: "verticalStiffnessBraking", side, value: stiffness, noise: context.noiseNewtons / descent },
  ];
}
