import { type Kinematics, powerAt, powerAtSample, velocityAt } from "../events/kinematics.ts";
import { type Phase, phasesOf } from "../events/phases.ts";
import type { Settings } from "../settings/settings.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { Remembered } from "./remembered.ts";
import { impulseNoise, totalNoise } from "./uncertainty/force-noise.ts";

/** An extreme of power, W, and where it stands. */
interface ExtremePower {
  readonly watts: number;
  readonly sample: number;
}

/** The same with what noise leaves in it, W. */
interface NoisyExtreme extends ExtremePower {
  readonly noise: number;
}

const braked = new Remembered<NoisyExtreme>();
const propelled = new Remembered<NoisyExtreme & { readonly joules: number }>();

/** Everything that power between two events and its noise follow from, beside the integrals of force. */
function inputsOf({ weightNewtons, gravity, startVelocity }: Kinematics, { from, to }: Phase, noiseNewtons: number) {
  return [from, to, weightNewtons, gravity, startVelocity, noiseNewtons];
}

function noisyExtreme(
  motion: Kinematics,
  phase: Phase,
  sign: 1 | -1,
  noiseNewtons: number,
  settings: Settings,
): NoisyExtreme {
  const extreme = extremePower(motion, phase.from, phase.to, sign);
  const noiseWatts = noiseNewtons * Math.abs(velocityAt(motion, extreme.sample));
  return { ...extreme, noise: extremeNoise(motion, phase, extreme.watts, noiseWatts, settings) };
}

/** Power of the total force on the centre of mass in braking and propulsion (METHODS §5). */
export function measurePower(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { braking, propulsion } = phasesOf(context.jump.events);
  return [
    ...(braking === undefined ? [] : brakingPower(context, braking, settings)),
    ...(propulsion === undefined ? [] : propulsionPower(context, propulsion, settings)),
  ];
}

function brakingPower(context: MeasureContext, phase: Phase, settings: Settings): RawMeasure[] {
  const { jump, limb: side } = context;
  const { motion } = jump;
  const { point } = totalNoise(context, settings);
  const { watts, noise } = braked.of(motion.impulse, inputsOf(motion, phase, point), () =>
    noisyExtreme(motion, phase, -1, point, settings),
  );
  return [{ id: "peakBrakingPower", side, value: watts, noise }];
}

function propulsionPower(context: MeasureContext, phase: Phase, settings: Settings): RawMeasure[] {
  const { from, to } = phase;
  const { jump, limb: side } = context;
  const { motion } = jump;
  const noise = totalNoise(context, settings);
  const { rateHz } = motion.signal;
  const seconds = (to - from) / rateHz;
  const {
    watts,
    sample,
    noise: ofPeak,
    joules,
  } = propelled.of(motion.impulse, inputsOf(motion, phase, noise.point), () => ({
    ...noisyExtreme(motion, phase, 1, noise.point, settings),
    joules: integratePower(motion, from, to),
  }));
  const fastest = Math.abs(velocityAt(motion, sample));
  const workNoise = impulseNoise(noise, to - from, rateHz) * fastest;
  return [
    { id: "peakPropulsionPower", side, value: watts, noise: ofPeak },
    { id: "meanPropulsionPower", side, value: joules / seconds, noise: workNoise / seconds },
  ];
}

/** As for a largest force: of the samples that may be the true extreme noise lifts one, σ·√(2 ln m) at most. */
function extremeNoise(
  motion: Kinematics,
  { from, to }: Phase,
  watts: number,
  noiseWatts: number,
  settings: Settings,
): number {
  const least = Math.abs(watts) - settings.peakNoiseDeviations * noiseWatts;
  const sign = Math.sign(watts);
  const last = Math.floor(to);
  let count = 0;
  for (let index = Math.ceil(from); index <= last; index += 1) {
    if (powerAtSample(motion, index) * sign >= least) count += 1;
  }
  return noiseWatts * Math.hypot(1, Math.sqrt(2 * Math.log(Math.max(1, count))));
}

/** ∫F·v dt in joules. F·v is a cubic between samples, which Simpson's rule integrates exactly. */
function integratePower(motion: Kinematics, from: number, to: number): number {
  let joules = 0;
  let left = from;
  let leftPower = powerAt(motion, from);
  while (left < to) {
    const next = Math.floor(left) + 1;
    const right = Math.min(to, next);
    const rightPower = right === next ? powerAtSample(motion, right) : powerAt(motion, right);
    const middlePower = powerAt(motion, (left + right) / 2);
    joules += ((leftPower + 4 * middlePower + rightPower) / 6) * (right - left);
    left = right;
    leftPower = rightPower;
  }
  return joules / motion.signal.rateHz;
}

/** Largest (sign 1) or most negative (sign −1) power between two events: the extreme of the piecewise cubic. */
function extremePower(motion: Kinematics, from: number, to: number, sign: 1 | -1): ExtremePower {
  let sample = from;
  let watts = powerAt(motion, from);
  const consider = (candidate: number): void => {
    const power = powerAt(motion, candidate);
    if (sign * power > sign * watts) {
      watts = power;
      sample = candidate;
    }
  };
  const last = Math.floor(to);
  for (let index = Math.ceil(from); index <= last; index += 1) {
    const power = powerAtSample(motion, index);
    if (sign * power > sign * watts) {
      watts = power;
      sample = index;
    }
  }
  consider(to);
  // Inside the two segments beside the largest sample the cubic may still rise above it.
  const centre = Math.round(sample);
  for (const start of [centre - 1, centre]) {
    for (const root of stationaryPower(motion, start)) if (root > from && root < to) consider(root);
  }
  return { watts, sample };
}

/**
 * Places inside the segment [start, start + 1] at which d(F·v)/dt = 0. With force f₀ + r·u and velocity
 * v₀ + b·u + c·u² (u from 0 to 1) the derivative is 3rc·u² + 2(f₀c + rb)·u + (f₀b + rv₀).
 */
function stationaryPower(motion: Kinematics, start: number): readonly number[] {
  const { force, rateHz } = motion.signal;
  if (start < motion.startSample || start + 1 >= motion.startSample + motion.impulse.length) return [];
  const mass = motion.weightNewtons / motion.gravity;
  const f0 = force[start]!;
  const rise = force[start + 1]! - f0;
  const v0 = velocityAt(motion, start);
  const linear = (f0 - motion.weightNewtons) / mass / rateHz;
  const square = rise / (2 * mass) / rateHz;
  const a = 3 * rise * square;
  const b = 2 * (f0 * square + rise * linear);
  const c = f0 * linear + rise * v0;
  return quadraticRoots(a, b, c)
    .filter((root) => root > 0 && root < 1)
    .map((root) => start + root);
}

function quadraticRoots(a: number, b: number, c: number): readonly number[] {
  if (a === 0) return b === 0 ? [] : [-c / b];
  const discriminant = b * b - 4 * a * c;
  if (discriminant < 0) return [];
  // The form that does not cancel.
  const q = -(b + Math.sign(b || 1) * Math.sqrt(discriminant)) / 2;
  return q === 0 ? [0] : [q / a, c / q];
}
