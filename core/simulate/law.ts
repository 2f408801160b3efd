import type { PiecewisePolynomial } from "./piecewise.ts";
import { evaluatePiecewise, joinPieces } from "./piecewise.ts";
import type { Motion } from "./solve.ts";
import { moveUnder } from "./solve.ts";

/**
 * Vertical force and the motion that follows from it over a stretch of time, in closed form. Times in seconds from the
 * beginning of the stretch; force as a part of body weight; metres and metres a second, upwards.
 */
export interface Law {
  readonly seconds: number;
  force(time: number): number;
  velocity(time: number): number;
  position(time: number): number;
  /** Where a derivative of the force jumps. */
  readonly breaks: readonly number[];
  /** Nothing carries the body, or it is carried elsewhere: no force whatever else moves. */
  readonly airborne?: true;
}

/** A law whose force is a piecewise polynomial. */
export function lawOfPieces(force: PiecewisePolynomial, motion: Motion): Law {
  return {
    seconds: force.seconds,
    force: (time) => evaluatePiecewise(force, time),
    velocity: (time) => evaluatePiecewise(motion.velocity, time),
    position: (time) => evaluatePiecewise(motion.position, time),
    breaks: force.starts,
  };
}

/** Standing or holding still at a height. */
export function restLaw(seconds: number, positionMetres: number): Law {
  return { seconds, force: () => 1, velocity: () => 0, position: () => positionMetres, breaks: [] };
}

/** Nothing but gravity acts. */
export function flightLaw(seconds: number, velocity: number, positionMetres: number, gravity: number): Law {
  return {
    seconds,
    force: () => 0,
    velocity: (time) => velocity - gravity * time,
    position: (time) => positionMetres + velocity * time - (gravity * time * time) / 2,
    breaks: [],
    airborne: true,
  };
}

/**
 * The body is elsewhere (on the box) and falls from rest at the end of the stretch, so that it arrives at the given
 * position with the given downward velocity (negative). The plate feels nothing.
 */
export function fallLaw(seconds: number, touchdownVelocity: number, touchdownPosition: number, gravity: number): Law {
  const fallSeconds = -touchdownVelocity / gravity;
  const height = touchdownPosition + (touchdownVelocity * touchdownVelocity) / (2 * gravity);
  const since = (time: number): number => Math.max(0, time - (seconds - fallSeconds));
  return {
    seconds,
    force: () => 0,
    velocity: (time) => -gravity * since(time),
    position: (time) => height - (gravity * since(time) ** 2) / 2,
    breaks: [],
    airborne: true,
  };
}

/** A slow, smooth change of height from rest to rest; the force is the cubic that a quintic displacement needs. */
export function moveLaw(seconds: number, fromMetres: number, toMetres: number, gravity: number): Law {
  const scale = (toMetres - fromMetres) / (gravity * seconds * seconds);
  const force = joinPieces([
    {
      seconds,
      coefficients: [1, (60 * scale) / seconds, (-180 * scale) / seconds ** 2, (120 * scale) / seconds ** 3],
    },
  ]);
  return lawOfPieces(force, moveUnder(force, gravity, 0, fromMetres));
}
