import type { Law } from "./law.ts";
import { lawOfPieces } from "./law.ts";
import type { PiecewisePolynomial } from "./piecewise.ts";
import { evaluatePiecewise, hermitePiece, joinPieces } from "./piecewise.ts";
import type { RiseShape } from "./shapes.ts";
import { findRoot, moveUnder, solveTwoAmplitudes } from "./solve.ts";

/** What a rise from a hold has to reach. SI units; force as a part of body weight. */
export interface RiseWishes {
  readonly shape: RiseShape;
  readonly gravity: number;
  /** First movement (of the dip, where there is one) to take-off. */
  readonly seconds: number;
  readonly takeoffVelocity: number;
  readonly positionInHold: number;
  readonly positionAtTakeoff: number;
  readonly fallPerSecond: number;
  /** A dip before the rise: how far force falls below body weight, and for how long. */
  readonly dip?: { readonly weightFraction: number; readonly seconds: number };
}

/** A rise that meets its wishes exactly. Times from first movement. */
export interface RiseLaw extends Law {
  /** Force returns to body weight after the dip; zero without one. */
  readonly endOfDip: number;
  /** Zero velocity after the dip; zero without one. */
  readonly lowestPosition: number;
  readonly fallStart: number;
}

const kneeSeconds = 0.06;
const kneeForce = 0.9;
const mostForce = 4.5;

/**
 * Solves a rise: the two levels of the shape follow from take-off velocity and position (linear).
 * @throws RangeError when force would fall below body weight before the end of the rise or exceed 4.5 body weights.
 */
export function solveRise(wishes: RiseWishes): RiseLaw {
  const { shape, gravity, seconds, fallPerSecond } = wishes;
  const dip = wishes.dip ?? { weightFraction: 0, seconds: 0 };
  const fallSeconds = kneeForce / fallPerSecond;
  const rest = seconds - dip.seconds - kneeSeconds - fallSeconds;
  const toFirst = shape.rise * rest;
  const toMiddle = shape.split * (rest - toFirst);
  const fromMiddle = rest - toFirst - toMiddle;
  const law = (first: number, second: number): PiecewisePolynomial => {
    const middle = 1 + (1 + shape.bulge) * ((first + second) / 2);
    const up = (middle - 1 - first) / toMiddle;
    const down = (1 + second - middle) / fromMiddle;
    return joinPieces([
      hermitePiece(dip.seconds / 2, 1, 1 - dip.weightFraction),
      hermitePiece(dip.seconds / 2, 1 - dip.weightFraction, 1),
      hermitePiece(toFirst, 1, 1 + first, 0, up),
      hermitePiece(toMiddle, 1 + first, middle, up, 0),
      hermitePiece(fromMiddle, middle, 1 + second, 0, down),
      hermitePiece(kneeSeconds, 1 + second, kneeForce, down, -fallPerSecond),
      { seconds: fallSeconds, coefficients: [kneeForce, -fallPerSecond] },
    ]);
  };
  const ends = (force: PiecewisePolynomial) => moveUnder(force, gravity, 0, wishes.positionInHold);
  const [first, second] = solveTwoAmplitudes(law, ends, wishes.takeoffVelocity, wishes.positionAtTakeoff);
  const force = law(first, second);
  const solved = lawOfPieces(force, ends(force));
  for (let time = dip.seconds; time < seconds - fallSeconds - kneeSeconds; time += 0.004) {
    const at = evaluatePiecewise(force, time);
    if (at < 1 - 1e-9 || at > mostForce) {
      throw new RangeError(
        `No rise of shape ${shape.name} lasting ${seconds.toFixed(3)} s reaches ${wishes.takeoffVelocity.toFixed(3)} m/s: ${at.toFixed(2)} body weights.`,
      );
    }
  }
  const lowest = dip.weightFraction === 0 ? 0 : findRoot(solved.velocity, dip.seconds, seconds - fallSeconds);
  if (lowest === undefined) throw new RangeError("The dip of this rise has no lowest position.");
  return { ...solved, endOfDip: dip.seconds, lowestPosition: lowest, fallStart: seconds - fallSeconds };
}
