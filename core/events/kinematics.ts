import { type ForceSignal, forceAt } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/**
 * Motion of the centre of mass from the force. Only the running integrals of force are stored; velocity and position
 * follow from them, the weight and two constants, so that another weight or starting velocity costs nothing.
 *
 * a = g·(F/W − 1), v = g·(∫F/W − t) + v₀, x = g·(∬F/W − t²/2) + v₀·t + x₀, with t from `startSample`: the exact
 * integrals of piecewise linear force (METHODS §1). Upward positive; m/s and m.
 */
export interface Kinematics {
  readonly signal: ForceSignal;
  readonly startSample: number;
  /** ∫F dt from the start to each sample, N·s. */
  readonly impulse: Float64Array;
  /** ∬F dt² from the start to each sample, N·s². */
  readonly doubleImpulse: Float64Array;
  /** NaN where nothing tells it. */
  readonly weightNewtons: number;
  readonly gravity: number;
  /** Velocity at the start, m/s; NaN where nothing tells it. */
  readonly startVelocity: number;
  /** Position at the start, m. */
  readonly startPosition: number;
}

/** Integrates force over [span.start, span.end); velocity and position start at zero. */
export function integrate(signal: ForceSignal, span: SampleSpan, weightNewtons: number, gravity: number): Kinematics {
  const { force, rateHz } = signal;
  const count = span.end - span.start;
  const impulse = new Float64Array(count);
  const doubleImpulse = new Float64Array(count);
  const step = 1 / rateHz;
  const halfStep = step / 2;
  const sixth = (step * step) / 6;
  let once = 0;
  let twice = 0;
  let before = force[span.start]!;
  for (let index = 1; index < count; index += 1) {
    const here = force[span.start + index]!;
    twice += once * step + (2 * before + here) * sixth;
    once += (before + here) * halfStep;
    impulse[index] = once;
    doubleImpulse[index] = twice;
    before = here;
  }
  return {
    signal,
    startSample: span.start,
    impulse,
    doubleImpulse,
    weightNewtons,
    gravity,
    startVelocity: 0,
    startPosition: 0,
  };
}

/** False where weight or velocity is unknown: then velocity, position and all that follows from them are NaN. */
export function knowsVelocity({ weightNewtons, startVelocity }: Kinematics): boolean {
  return !Number.isNaN(weightNewtons) && !Number.isNaN(startVelocity);
}

/** The last fractional sample at which motion is known. */
export function lastSample(motion: Kinematics): number {
  return motion.startSample + motion.impulse.length - 1;
}

/** Velocity in m/s at a fractional sample. */
export function velocityAt(motion: Kinematics, sample: number): number {
  const { index, fraction, step } = place(motion, sample);
  const force = motion.signal.force[motion.startSample + index]!;
  const rise = forceRise(motion, index);
  const impulse = motion.impulse[index]! + step * fraction * (force + (fraction / 2) * rise);
  return motion.gravity * (impulse / motion.weightNewtons - (index + fraction) * step) + motion.startVelocity;
}

/** Position in m at a fractional sample. */
export function positionAt(motion: Kinematics, sample: number): number {
  const { index, fraction, step } = place(motion, sample);
  const force = motion.signal.force[motion.startSample + index]!;
  const rise = forceRise(motion, index);
  const within = fraction * step;
  const time = (index + fraction) * step;
  const twice =
    motion.doubleImpulse[index]! +
    motion.impulse[index]! * within +
    within * within * (force / 2 + (fraction / 6) * rise);
  return (
    motion.gravity * (twice / motion.weightNewtons - (time * time) / 2) +
    motion.startVelocity * time +
    motion.startPosition
  );
}

/** Power of the total force on the centre of mass, W. */
export function powerAt(motion: Kinematics, sample: number): number {
  return forceAt(motion.signal, sample) * velocityAt(motion, sample);
}

/** Velocity in m/s at a whole sample: the value of `velocityAt`, quicker because nothing lies between samples. */
export function velocityAtSample(motion: Kinematics, sample: number): number {
  const index = sample - motion.startSample;
  if (index < 0 || index > motion.impulse.length - 2) return velocityAt(motion, sample);
  const step = 1 / motion.signal.rateHz;
  return motion.gravity * (motion.impulse[index]! / motion.weightNewtons - index * step) + motion.startVelocity;
}

/** Position in m at a whole sample: the value of `positionAt`. */
export function positionAtSample(motion: Kinematics, sample: number): number {
  const index = sample - motion.startSample;
  if (index < 0 || index > motion.impulse.length - 2) return positionAt(motion, sample);
  const time = index * (1 / motion.signal.rateHz);
  return (
    motion.gravity * (motion.doubleImpulse[index]! / motion.weightNewtons - (time * time) / 2) +
    motion.startVelocity * time +
    motion.startPosition
  );
}

/** Power in W at a whole sample: the value of `powerAt`. */
export function powerAtSample(motion: Kinematics, sample: number): number {
  return motion.signal.force[sample]! * velocityAtSample(motion, sample);
}

/** The same motion with velocity and position shifted so that they are as given at `sample`. */
export function anchored(
  motion: Kinematics,
  sample: number,
  at: { readonly velocity?: number; readonly position?: number },
): Kinematics {
  let moved = motion;
  if (at.velocity !== undefined) {
    const startVelocity = motion.startVelocity + at.velocity - velocityAt(motion, sample);
    moved = { ...moved, startVelocity };
  }
  if (at.position !== undefined) {
    moved = { ...moved, startPosition: moved.startPosition + at.position - positionAt(moved, sample) };
  }
  return moved;
}

/** The same motion with mean velocity zero over a window of quiet standing, samples [start, end). */
export function stillOver(motion: Kinematics, window: SampleSpan): Kinematics {
  const last = window.end - 1;
  const seconds = (last - window.start) / motion.signal.rateHz;
  const drift = (positionAt(motion, last) - positionAt(motion, window.start)) / seconds;
  return { ...motion, startVelocity: motion.startVelocity - drift };
}

/** The same force read with another weight: mass follows as weight over gravity. */
export function withWeight(motion: Kinematics, weightNewtons: number): Kinematics {
  return { ...motion, weightNewtons };
}

function place(motion: Kinematics, sample: number) {
  const relative = sample - motion.startSample;
  const index = Math.max(0, Math.min(Math.floor(relative), motion.impulse.length - 2));
  return { index, fraction: relative - index, step: 1 / motion.signal.rateHz };
}

function forceRise(motion: Kinematics, index: number): number {
  const { force } = motion.signal;
  return force[motion.startSample + index + 1]! - force[motion.startSample + index]!;
}
