import type { Limb, Side } from "../../core/ground/limb.ts";
import { forceAt, impulseBetween, largestBetween, type PlainForce } from "./plain-curve.ts";
import { type PlainMotion, powerAt, powerExtremes, simpson } from "./plain-motion.ts";
import type { PlainMeasure } from "./plain-values.ts";

/** Two instants that bound a phase. */
export interface PlainPhase {
  readonly from: number;
  readonly to: number;
}

/** ∫(F − level) dt. */
export function netImpulse(force: PlainForce, phase: PlainPhase, level: number): number {
  return impulseBetween(force, phase.from, phase.to) - level * (phase.to - phase.from);
}

/**
 * Force and impulse measures of the push of one curve: the whole body's, or one limb's over the phases of the whole
 * body. Braking is absent in a squat jump.
 */
export function pushForces(
  force: PlainForce,
  side: Limb,
  braking: PlainPhase | undefined,
  propulsion: PlainPhase,
): PlainMeasure[] {
  const measures: PlainMeasure[] = [];
  const describe = (name: "Braking" | "Propulsion", phase: PlainPhase): void => {
    const impulse = impulseBetween(force, phase.from, phase.to);
    measures.push(
      { id: `${name.toLowerCase()}Impulse`, side, value: impulse },
      { id: `mean${name}Force`, side, value: impulse / (phase.to - phase.from) },
      { id: `peak${name}Force`, side, value: largestBetween(force, phase.from, phase.to).value },
    );
  };
  if (braking !== undefined) {
    describe("Braking", braking);
    measures.push({ id: "forceAtLowestPosition", side, value: forceAt(force, braking.to) });
  }
  describe("Propulsion", propulsion);
  return measures;
}

/** Net impulses of a limb in a two-leg test: above half the body weight. */
export function limbNetImpulses(
  force: PlainForce,
  side: Side,
  braking: PlainPhase | undefined,
  propulsion: PlainPhase,
  weight: number,
): PlainMeasure[] {
  const measures: PlainMeasure[] = [
    { id: "propulsionLimbNetImpulse", side, value: netImpulse(force, propulsion, weight / 2) },
  ];
  if (braking !== undefined)
    measures.push({ id: "brakingLimbNetImpulse", side, value: netImpulse(force, braking, weight / 2) });
  return measures;
}

/** Durations, net impulses and powers of the whole body. */
export function pushOfTheBody(
  motion: PlainMotion,
  side: Limb,
  braking: PlainPhase | undefined,
  propulsion: PlainPhase,
): PlainMeasure[] {
  const { force, weight } = motion;
  const seconds = propulsion.to - propulsion.from;
  const work = simpson(motion, (time) => powerAt(motion, time), propulsion.from, propulsion.to);
  const measures: PlainMeasure[] = [
    { id: "propulsionTime", side, value: seconds },
    { id: "propulsionNetImpulse", side, value: netImpulse(force, propulsion, weight) },
    { id: "peakPropulsionPower", side, value: powerExtremes(motion, propulsion.from, propulsion.to).largest },
    { id: "meanPropulsionPower", side, value: work / seconds },
  ];
  if (braking !== undefined) {
    measures.push(
      { id: "brakingTime", side, value: braking.to - braking.from },
      { id: "brakingNetImpulse", side, value: netImpulse(force, braking, weight) },
      { id: "peakBrakingPower", side, value: powerExtremes(motion, braking.from, braking.to).least },
    );
  }
  return measures;
}
