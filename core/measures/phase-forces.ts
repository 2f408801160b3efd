import { integralNoise } from "../events/integral-noise.ts";
import { positionAt } from "../events/kinematics.ts";
import { type Phase, phasesOf } from "../events/phases.ts";
import type { MeasureSide } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, forceAt, integrateForce, maximumForce } from "../trial/force-signal.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { Remembered } from "./remembered.ts";
import { type ForceNoise, impulseNoise, limbNoises, peakNoise, totalNoise } from "./uncertainty/force-noise.ts";

/** Impulses, forces and durations of the phases a trial has (METHODS §5), from unfiltered force. */
export function measurePhases(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { unweighting, braking, propulsion } = phasesOf(context.jump.events);
  return [
    ...(unweighting === undefined
      ? []
      : [duration(context, "unweightingTime", unweighting), netImpulse(context, "unweightingNetImpulse", unweighting)]),
    ...(braking === undefined
      ? []
      : [...loadedPhase(context, "braking", braking, settings), ...lowestForces(context, braking.to, settings)]),
    ...brakingSlopes(context, settings),
    ...(propulsion === undefined ? [] : loadedPhase(context, "propulsion", propulsion, settings)),
  ];
}

/** Written out, because identifiers put together at run time are slow to compare. */
const phaseIds = {
  braking: {
    time: "brakingTime",
    impulse: "brakingImpulse",
    peak: "peakBrakingForce",
    mean: "meanBrakingForce",
    net: "brakingNetImpulse",
    limbNet: "brakingLimbNetImpulse",
  },
  propulsion: {
    time: "propulsionTime",
    impulse: "propulsionImpulse",
    peak: "peakPropulsionForce",
    mean: "meanPropulsionForce",
    net: "propulsionNetImpulse",
    limbNet: "propulsionLimbNetImpulse",
  },
} as const;

/** What braking and propulsion are measured by. */
function loadedPhase(
  context: MeasureContext,
  name: "braking" | "propulsion",
  phase: Phase,
  settings: Settings,
): RawMeasure[] {
  return [
    duration(context, phaseIds[name].time, phase),
    ...limbwise(context, (signal, noise, side) => phaseForces(signal, noise, side, name, phase, settings), settings),
    netImpulse(context, phaseIds[name].net, phase),
    ...limbNetImpulses(context, phaseIds[name].limbNet, phase),
  ];
}

function duration({ jump, limb }: MeasureContext, id: MeasureId, { from, to }: Phase): RawMeasure {
  return { id, side: limb, value: (to - from) / jump.motion.signal.rateHz, noise: 0 };
}

function lowestForces(context: MeasureContext, lowestPosition: number, settings: Settings): RawMeasure[] {
  return limbwise(
    context,
    (signal, noise, side) => [
      { id: "forceAtLowestPosition", side, value: forceAt(signal, lowestPosition), noise: noise.point },
    ],
    settings,
  );
}

/** The same measure for the total and, on two plates, for each limb. */
export function limbwise(
  context: MeasureContext,
  measure: (signal: ForceSignal, noise: ForceNoise, side: MeasureSide) => RawMeasure[],
  settings: Settings,
): RawMeasure[] {
  const noises = limbNoises(context, settings);
  return [
    ...measure(context.jump.motion.signal, totalNoise(context, settings), context.limb),
    ...context.limbs.flatMap(({ signal }, index) => measure(signal, noises[index]!, signal.side)),
  ];
}

/** Impulse (N·s) and largest force (N) of one signal in one phase, and what noise leaves in the latter. */
const forces = new Remembered<{ readonly impulse: number; readonly peak: number; readonly ofPeak: number }>();

function phaseForces(
  signal: ForceSignal,
  noise: ForceNoise,
  side: MeasureSide,
  name: "braking" | "propulsion",
  { from, to }: Phase,
  settings: Settings,
): RawMeasure[] {
  const ids = phaseIds[name];
  const { impulse, peak, ofPeak } = forces.of(signal, [from, to, noise.point], () => {
    const largest = maximumForce(signal, from, to);
    return {
      impulse: integrateForce(signal, from, to),
      peak: largest.newtons,
      ofPeak: peakNoise(signal, largest, from, to, noise, settings).newtons,
    };
  });
  const seconds = (to - from) / signal.rateHz;
  const ofImpulse = impulseNoise(noise, to - from, signal.rateHz);
  return [
    { id: ids.impulse, side, value: impulse, noise: ofImpulse },
    { id: ids.peak, side, value: peak, noise: ofPeak },
    { id: ids.mean, side, value: impulse / seconds, noise: ofImpulse / seconds },
  ];
}

function netImpulse(context: MeasureContext, id: MeasureId, { from, to }: Phase): RawMeasure {
  const { signal, weightNewtons } = context.jump.motion;
  const value = integrateForce(signal, from, to) - (weightNewtons * (to - from)) / signal.rateHz;
  const noise = integralNoise(context.noiseNewtons, to - from, signal.rateHz);
  return { id, side: context.limb, value, noise };
}

/** Per limb, net of half the body weight (METHODS §5). */
function limbNetImpulses(context: MeasureContext, id: MeasureId, { from, to }: Phase): RawMeasure[] {
  const half = context.jump.motion.weightNewtons / 2;
  const { rateHz } = context.jump.motion.signal;
  // The zeros of both plates are in the total's weight: half of either stays.
  const ofZeros = (Math.hypot(...context.limbs.map((limb) => limb.zeroNewtons)) / 2) * ((to - from) / rateHz);
  return context.limbs.map(({ signal, noiseNewtons }) => ({
    id,
    side: signal.side,
    value: integrateForce(signal, from, to) - (half * (to - from)) / signal.rateHz,
    noise: Math.hypot(integralNoise(noiseNewtons, to - from, signal.rateHz), ofZeros),
  }));
}

/** Rate of force development and stiffness of the braking that follows an unweighting: standing starts only. */
function brakingSlopes(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { events, motion } = context.jump;
  const { endOfUnweighting, lowestPosition } = events;
  if (endOfUnweighting === undefined || lowestPosition === undefined) return [];
  const side = context.limb;
  const seconds = (lowestPosition - endOfUnweighting) / motion.signal.rateHz;
  const lowest = forceAt(motion.signal, lowestPosition);
  const rise = lowest - forceAt(motion.signal, endOfUnweighting);
  const descent = positionAt(motion, endOfUnweighting) - positionAt(motion, lowestPosition);
  const stiffness = (lowest - motion.weightNewtons) / descent;
  const { point } = totalNoise(context, settings);
  return [
    {
      id: "brakingRateOfForceDevelopment",
      side,
      value: rise / seconds,
      noise: (Math.SQRT2 * point) / seconds,
    },
    { id: "verticalStiffnessBraking", side, value: stiffness, noise: point / descent },
  ];
}
