import type { Piece, PiecewisePolynomial } from "./piecewise.ts";
import { evaluatePiecewise, hermitePiece, joinPieces } from "./piecewise.ts";
import type { LandingShape } from "./shapes.ts";
import type { Motion } from "./solve.ts";
import { findRoot, moveUnder, solveTwoAmplitudes } from "./solve.ts";

/** What a landing starts from. SI units; force as a part of body weight. */
export interface LandingWishes {
  readonly shape: LandingShape;
  readonly gravity: number;
  /** Negative: downwards. */
  readonly touchdownVelocity: number;
  readonly positionAtTouchdown: number;
  /** Slope with which force meets the plate, in body weights a second. */
  readonly ratePerSecond: number;
  /** Force up to which the first contact is a straight line, in body weights. Absent: a curve from the start. */
  readonly straightTo?: number;
}

/** A landing that ends exactly at rest in the standing position. Times from touchdown. */
export interface LandingLaw {
  readonly force: PiecewisePolynomial;
  readonly motion: Motion;
  /** First local maximum of the force, and the main peak (the same instant where there is one peak). */
  readonly firstPeakTime: number;
  readonly peakTime: number;
  readonly peakForce: number;
  /** Velocity returns to zero: the lowest point of the landing. */
  readonly landingEnd: number;
}

const dipSeconds = 0.012;
const secondRiseSeconds = 0.028;
/** After a straight start the first peak comes at the latest this much later, however gently the force starts. */
const longestRiseSeconds = 0.07;

/**
 * Solves a landing: for a given peak, the levels of rising and settling follow from ending at rest at position zero
 * (linear); the peak follows from the shape's level of rising (one root).
 * @throws RangeError when no peak between 1.02 and 14 body weights makes this landing.
 */
export function solveLanding(wishes: LandingWishes): LandingLaw {
  const excess = (peak: number): number => landingWith(wishes, peak).riseLevel - wishes.shape.riseLevel;
  const peak = findRoot(excess, 1.02, 14);
  if (peak === undefined) {
    throw new RangeError(
      `No landing of shape ${wishes.shape.name} absorbs ${wishes.touchdownVelocity.toFixed(3)} m/s with a peak between 1.02 and 14 body weights.`,
    );
  }
  const { force, motion, firstPeakTime, peakTime } = landingWith(wishes, peak);
  const landingEnd = findRoot((time) => evaluatePiecewise(motion.velocity, time), 0, lowestBracket(motion, peakTime));
  if (landingEnd === undefined) throw new RangeError("The landing never comes to rest.");
  return { force, motion, firstPeakTime, peakTime, peakForce: peak, landingEnd };
}

function landingWith(wishes: LandingWishes, peak: number) {
  const { shape, gravity, ratePerSecond } = wishes;
  const first = shape.firstPeak;
  // A slope of 1.5 times the mean makes the rise a curve whose slope only falls, so the first contact is the steepest.
  const firstHeight = first === undefined ? peak : first.fraction * peak;
  const straightTo = wishes.straightTo ?? 0;
  const straightSeconds = straightTo / ratePerSecond;
  const curveSeconds = (1.5 * (firstHeight - straightTo)) / ratePerSecond;
  const riseSeconds = straightTo === 0 ? curveSeconds : Math.min(curveSeconds, longestRiseSeconds);
  const firstSeconds = straightSeconds + riseSeconds;
  const start: Piece[] = [
    { seconds: straightSeconds, coefficients: [0, ratePerSecond] },
    hermitePiece(riseSeconds, straightTo, firstHeight, ratePerSecond, 0),
  ];
  if (first !== undefined) {
    start.push(hermitePiece(dipSeconds, firstHeight, first.dipFraction * peak));
    start.push(hermitePiece(secondRiseSeconds, first.dipFraction * peak, peak));
  }
  const peakTime = firstSeconds + (first === undefined ? 0 : dipSeconds + secondRiseSeconds);
  const law = (rise: number, settle: number): PiecewisePolynomial =>
    joinPieces([
      ...start,
      hermitePiece(shape.decaySeconds, peak, 1 + rise),
      hermitePiece(shape.riseSeconds, 1 + rise, 1 - settle),
      hermitePiece(shape.settleSeconds, 1 - settle, 1),
    ]);
  const ends = (force: PiecewisePolynomial): Motion =>
    moveUnder(force, gravity, wishes.touchdownVelocity, wishes.positionAtTouchdown);
  const [riseLevel, settleLevel] = solveTwoAmplitudes(law, ends, 0, 0);
  const force = law(riseLevel, settleLevel);
  return { force, motion: ends(force), firstPeakTime: firstSeconds, peakTime, riseLevel, settleLevel };
}

/** A time after the peak at which the body already rises, for bracketing the instant of rest. */
function lowestBracket(motion: Motion, peakTime: number): number {
  const end = motion.velocity.seconds;
  for (let time = peakTime; time < end; time += 0.005) {
    if (evaluatePiecewise(motion.velocity, time) > 0) return time;
  }
  return end;
}
