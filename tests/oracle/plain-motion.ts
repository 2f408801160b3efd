import { forceAt, halve, knotsBetween, lastTime, meanOf, type PlainForce } from "./plain-curve.ts";

/** Velocity and position of the centre of mass, the exact integrals of (F − W) / m (METHODS §1, §3). Upward positive. */
export interface PlainMotion {
  readonly force: PlainForce;
  readonly weight: number;
  readonly mass: number;
  /** At the samples. */
  readonly velocity: readonly number[];
  readonly position: readonly number[];
}

/** Integrates from rest at height zero in the first sample. */
function integrateFromRest(force: PlainForce, weight: number, mass: number): PlainMotion {
  const step = 1 / force.rateHz;
  const velocity = [0];
  const position = [0];
  for (let index = 0; index + 1 < force.samples.length; index++) {
    const acceleration = (force.samples[index]! - weight) / mass;
    const jerk = (force.samples[index + 1]! - force.samples[index]!) / mass / step;
    velocity.push(velocity[index]! + acceleration * step + (jerk * step ** 2) / 2);
    position.push(position[index]! + velocity[index]! * step + (acceleration * step ** 2) / 2 + (jerk * step ** 3) / 6);
  }
  return { force, weight, mass, velocity, position };
}

/** Adds a constant velocity, and what follows from it, to a motion. */
function withVelocityAdded(motion: PlainMotion, added: number): PlainMotion {
  const velocity: number[] = [];
  const position: number[] = [];
  for (let index = 0; index < motion.velocity.length; index++) {
    velocity.push(motion.velocity[index]! + added);
    position.push(motion.position[index]! + (added * index) / motion.force.rateHz);
  }
  return { ...motion, velocity, position };
}

/** Adds a constant to the position. */
function withPositionAdded(motion: PlainMotion, added: number): PlainMotion {
  return { ...motion, position: motion.position.map((value) => value + added) };
}

/** A motion whose mean velocity between two times is zero (METHODS §3). */
export function motionQuietBetween(
  force: PlainForce,
  weight: number,
  mass: number,
  from: number,
  to: number,
): PlainMotion {
  const motion = integrateFromRest(force, weight, mass);
  const meanVelocity = (positionAt(motion, to) - positionAt(motion, from)) / (to - from);
  return withVelocityAdded(motion, -meanVelocity);
}

/** The same motion with position zero at a time. */
export function placedAtZero(motion: PlainMotion, time: number): PlainMotion {
  return withPositionAdded(motion, -positionAt(motion, time));
}

/**
 * The same motion with mean position zero between two times. METHODS leaves open how that mean is taken: here over the
 * samples.
 */
export function placedAtZeroBetween(motion: PlainMotion, from: number, to: number): PlainMotion {
  const { rateHz } = motion.force;
  const inside = motion.position.slice(Math.round(from * rateHz), Math.round(to * rateHz) + 1);
  return withPositionAdded(motion, -meanOf(inside));
}

/** The same motion with the velocity it has at a time replaced. */
export function withVelocityAt(motion: PlainMotion, time: number, velocity: number): PlainMotion {
  return withVelocityAdded(motion, velocity - velocityAt(motion, time));
}

function pieceAt(motion: PlainMotion, time: number): { index: number; since: number; a: number; jerk: number } {
  const { rateHz, samples } = motion.force;
  const index = Math.min(Math.max(Math.floor(time * rateHz), 0), samples.length - 2);
  return {
    index,
    since: time - index / rateHz,
    a: (samples[index]! - motion.weight) / motion.mass,
    jerk: ((samples[index + 1]! - samples[index]!) * rateHz) / motion.mass,
  };
}

export function velocityAt(motion: PlainMotion, time: number): number {
  const { index, since, a, jerk } = pieceAt(motion, time);
  return motion.velocity[index]! + a * since + (jerk * since ** 2) / 2;
}

export function positionAt(motion: PlainMotion, time: number): number {
  const { index, since, a, jerk } = pieceAt(motion, time);
  return motion.position[index]! + motion.velocity[index]! * since + (a * since ** 2) / 2 + (jerk * since ** 3) / 6;
}

/** First time after `from` at which velocity rises through zero. */
export function firstRiseThroughZero(motion: PlainMotion, from: number): number | undefined {
  const knots = knotsBetween(motion.force.rateHz, from, lastTime(motion.force));
  for (let piece = 0; piece + 1 < knots.length; piece++) {
    const start = knots[piece]!;
    const end = knots[piece + 1]!;
    if (velocityAt(motion, start) < 0 && velocityAt(motion, end) >= 0) {
      return halve((time) => velocityAt(motion, time), start, end);
    }
  }
  return undefined;
}

/** Integral of something that is at most cubic between knots; Simpson's rule is exact for it. */
export function simpson(motion: PlainMotion, valueAt: (time: number) => number, from: number, to: number): number {
  const knots = knotsBetween(motion.force.rateHz, from, to);
  let area = 0;
  for (let piece = 0; piece + 1 < knots.length; piece++) {
    const start = knots[piece]!;
    const end = knots[piece + 1]!;
    area += ((valueAt(start) + 4 * valueAt((start + end) / 2) + valueAt(end)) / 6) * (end - start);
  }
  return area;
}

export function powerAt(motion: PlainMotion, time: number): number {
  return forceAt(motion.force, time) * velocityAt(motion, time);
}

/** Least and largest power between two times; inside a piece the derivative of the cubic is zero there. */
export function powerExtremes(motion: PlainMotion, from: number, to: number): { least: number; largest: number } {
  const knots = knotsBetween(motion.force.rateHz, from, to);
  const values = [powerAt(motion, to)];
  for (let piece = 0; piece + 1 < knots.length; piece++) {
    const start = knots[piece]!;
    const end = knots[piece + 1]!;
    values.push(powerAt(motion, start));
    // F = f + s·u and v = v0 + a·u + s·u²/(2m), so (F·v)' = (s·v0 + f·a) + (2·s·a + f·s/m)... in powers of u, below.
    const f = forceAt(motion.force, start);
    const s = (forceAt(motion.force, end) - f) / (end - start);
    const v0 = velocityAt(motion, start);
    const a = (f - motion.weight) / motion.mass;
    const constant = s * v0 + f * a;
    const linear = 2 * s * a + (f * s) / motion.mass;
    const quadratic = (3 * s * s) / (2 * motion.mass);
    for (const u of rootsOf(quadratic, linear, constant)) {
      if (u > 0 && u < end - start) values.push(powerAt(motion, start + u));
    }
  }
  return { least: Math.min(...values), largest: Math.max(...values) };
}

function rootsOf(quadratic: number, linear: number, constant: number): number[] {
  if (quadratic === 0) return linear === 0 ? [] : [-constant / linear];
  const discriminant = linear ** 2 - 4 * quadratic * constant;
  if (discriminant < 0) return [];
  const root = Math.sqrt(discriminant);
  return [(-linear - root) / (2 * quadratic), (-linear + root) / (2 * quadratic)];
}
