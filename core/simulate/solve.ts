import type { PiecewisePolynomial } from "./piecewise.ts";
import { evaluatePiecewise, integratePiecewise, scalePiecewise } from "./piecewise.ts";

/** Vertical motion that follows from a force law by exact integration. */
export interface Motion {
  readonly velocity: PiecewisePolynomial;
  readonly position: PiecewisePolynomial;
  readonly finalVelocity: number;
  readonly finalPosition: number;
}

/** Integrates a force given as a part of body weight: acceleration is gravity times (force − 1). */
export function moveUnder(force: PiecewisePolynomial, gravity: number, velocity: number, position: number): Motion {
  const velocityCurve = integratePiecewise(scalePiecewise(force, gravity, -gravity), velocity);
  const positionCurve = integratePiecewise(velocityCurve, position);
  return {
    velocity: velocityCurve,
    position: positionCurve,
    finalVelocity: evaluatePiecewise(velocityCurve, velocityCurve.seconds),
    finalPosition: evaluatePiecewise(positionCurve, positionCurve.seconds),
  };
}

/**
 * Finds the two amplitudes, in which the law is linear, that bring velocity and position to the wanted ends. The
 * duration of the law must not depend on them.
 */
export function solveTwoAmplitudes(
  law: (first: number, second: number) => PiecewisePolynomial,
  ends: (law: PiecewisePolynomial) => Motion,
  wantedVelocity: number,
  wantedPosition: number,
): readonly [number, number] {
  const base = ends(law(0, 0));
  const first = ends(law(1, 0));
  const second = ends(law(0, 1));
  const a = first.finalVelocity - base.finalVelocity;
  const b = second.finalVelocity - base.finalVelocity;
  const c = first.finalPosition - base.finalPosition;
  const d = second.finalPosition - base.finalPosition;
  const velocity = wantedVelocity - base.finalVelocity;
  const position = wantedPosition - base.finalPosition;
  const determinant = a * d - b * c;
  return [(velocity * d - b * position) / determinant, (a * position - c * velocity) / determinant];
}

/**
 * Root of a continuous function between two ends of opposite sign, by regula falsi with the Illinois step; undefined
 * when the signs are equal. Stops when the bracket or the value is as small as doubles allow.
 */
export function findRoot(
  value: (x: number) => number,
  low: number,
  high: number,
  tolerance = 1e-14,
): number | undefined {
  let a = low;
  let b = high;
  let valueA = value(a);
  let valueB = value(b);
  if (valueA === 0) return a;
  if (valueB === 0) return b;
  if (valueA * valueB > 0 || !Number.isFinite(valueA * valueB)) return undefined;
  let side = 0;
  for (let step = 0; step < 200; step++) {
    const halves = step % 8 === 7;
    const x = halves ? (a + b) / 2 : (valueA * b - valueB * a) / (valueA - valueB);
    const at = value(x);
    if (at === 0 || Math.abs(b - a) <= tolerance * Math.max(1, Math.abs(x))) return x;
    if (at * valueB > 0) {
      b = x;
      valueB = at;
      if (side === -1) valueA /= 2;
      side = -1;
    } else {
      a = x;
      valueA = at;
      if (side === 1) valueB /= 2;
      side = 1;
    }
  }
  return (a + b) / 2;
}
