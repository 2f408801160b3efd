import type { Law } from "./law.ts";
import { lawOfPieces } from "./law.ts";
import type { PiecewisePolynomial } from "./piecewise.ts";
import { hermitePiece, joinPieces } from "./piecewise.ts";
import type { ContactShape } from "./shapes.ts";
import { findRoot, moveUnder, solveTwoAmplitudes } from "./solve.ts";

/** What a contact between two flights has to reach. SI units; force as a part of body weight. */
export interface ContactWishes {
  readonly shape: ContactShape;
  readonly gravity: number;
  readonly seconds: number;
  /** Negative: downwards. */
  readonly touchdownVelocity: number;
  readonly takeoffVelocity: number;
  readonly positionAtTakeoff: number;
  /** How much lower than at take-off the centre of mass is at touchdown; the half sine decides it itself. */
  readonly touchdownLowerMetres: number;
  /** Slopes of meeting and leaving the plate, in body weights a second. */
  readonly risePerSecond: number;
  readonly fallPerSecond: number;
  /** Force up to which the first contact is a straight line, in body weights; zero: a curve from the start. */
  readonly straightTo: number;
}

/** A contact that meets its wishes exactly. Times from touchdown. */
export interface ContactLaw extends Law {
  readonly positionAtTouchdown: number;
  readonly lowestPosition: number;
  /** The straight fall to zero; the half sine has none and names a late instant instead. */
  readonly fallStart: number;
  /** First local maximum of the force. */
  readonly firstPeakTime: number;
  /** Stiffness of the spring the half sine stands for: largest force over fall of the centre of mass (N/m per kg). */
  readonly springStiffnessPerKg?: number;
}

const kneeForce = 0.6;
const mostForce = 9;
/** Middle of the contact: the body never floats between the two pushes. */
const leastMiddleForce = 0.4;

/**
 * Solves a contact: the two levels of the shape follow from take-off velocity and position (linear).
 * @throws RangeError when the force would leave the plate in between or exceed nine body weights.
 */
export function solveContact(wishes: ContactWishes): ContactLaw {
  return wishes.shape.kind === "half-sine" ? halfSine(wishes) : twoLevels(wishes, wishes.shape);
}

function twoLevels(wishes: ContactWishes, shape: Extract<ContactShape, { kind: "two-levels" }>): ContactLaw {
  const { gravity, seconds, risePerSecond, fallPerSecond, straightTo } = wishes;
  const straightSeconds = straightTo / risePerSecond;
  const fallSeconds = kneeForce / fallPerSecond;
  const positionAtTouchdown = wishes.positionAtTakeoff - wishes.touchdownLowerMetres;
  const ends = (force: PiecewisePolynomial) => moveUnder(force, gravity, wishes.touchdownVelocity, positionAtTouchdown);

  let riseSeconds = shape.rise * seconds;
  let kneeSeconds = shape.knee * seconds;
  const law = (first: number, second: number): PiecewisePolynomial => {
    const middle = (1 + shape.bulge) * ((first + second) / 2);
    const between = seconds - straightSeconds - riseSeconds - kneeSeconds - fallSeconds;
    const toMiddle = shape.split * between;
    const fromMiddle = between - toMiddle;
    // Shoulders of a single hump keep climbing to it and falling from it; two peaks stand still at their tops.
    const up = shape.bulge > 0 ? (middle - first) / toMiddle : 0;
    const down = shape.bulge > 0 ? (second - middle) / fromMiddle : 0;
    return joinPieces([
      { seconds: straightSeconds, coefficients: [0, risePerSecond] },
      hermitePiece(riseSeconds, straightTo, first, risePerSecond, up),
      hermitePiece(toMiddle, first, middle, up, 0),
      hermitePiece(fromMiddle, middle, second, 0, down),
      hermitePiece(kneeSeconds, second, kneeForce, down, -fallPerSecond),
      { seconds: fallSeconds, coefficients: [kneeForce, -fallPerSecond] },
    ]);
  };
  const solve = (): readonly [number, number] =>
    solveTwoAmplitudes(law, ends, wishes.takeoffVelocity, wishes.positionAtTakeoff);
  // A slope more than three times the mean would make the rise or the knee swing past its level, so a hard first
  // contact reaches its level earlier. The last solution is exact for the lengths it was made with.
  let [first, second] = solve();
  for (let step = 0; step < 6; step++) {
    riseSeconds = Math.min(shape.rise * seconds, (2.2 * Math.max(0.2, first - straightTo)) / risePerSecond);
    kneeSeconds = Math.min(shape.knee * seconds, (2.2 * Math.max(0.2, second - kneeForce)) / fallPerSecond);
    [first, second] = solve();
  }
  const force = law(first, second);
  const solved = lawOfPieces(force, ends(force));
  const fallStart = seconds - fallSeconds;
  const lowestPosition = lowestOf(solved, wishes);
  for (let step = 1; step < 200; step++) {
    const time = (fallStart * step) / 200;
    const at = solved.force(time);
    const isMiddle = time > straightSeconds + riseSeconds && time < fallStart - kneeSeconds;
    if (at > mostForce || at < (isMiddle ? leastMiddleForce : 0))
      throw impossible(wishes, `${at.toFixed(2)} body weights`);
  }
  const firstPeakTime = straightSeconds + riseSeconds + (shape.bulge > 0 ? (force.pieces[2]?.seconds ?? 0) : 0);
  return { ...solved, positionAtTouchdown, lowestPosition, fallStart, firstPeakTime };
}

/**
 * The force of a spring-mass hop as the sine model of stiffness takes it: F = Fmax·sin(πt/T) (Dalleau et al. 2004,
 * Int J Sports Med 25(3):170–176; Morin et al. 2005, J Appl Biomech 21(2):167–180). Symmetric in time, so the
 * difference in height between touchdown and take-off follows from the two velocities.
 */
function halfSine(wishes: ContactWishes): ContactLaw {
  const { gravity, seconds, touchdownVelocity, takeoffVelocity } = wishes;
  const rate = Math.PI / seconds;
  const peak = ((takeoffVelocity - touchdownVelocity) / gravity + seconds) * (rate / 2);
  if (peak > mostForce) throw impossible(wishes, `${peak.toFixed(2)} body weights`);
  const positionAtTouchdown = wishes.positionAtTakeoff - ((touchdownVelocity + takeoffVelocity) / 2) * seconds;
  const law: Law = {
    seconds,
    force: (time) => (time <= 0 || time >= seconds ? 0 : peak * Math.sin(rate * time)),
    velocity: (time) => touchdownVelocity - gravity * time + ((gravity * peak) / rate) * (1 - Math.cos(rate * time)),
    position: (time) =>
      positionAtTouchdown +
      touchdownVelocity * time -
      (gravity * time * time) / 2 +
      ((gravity * peak) / rate) * (time - Math.sin(rate * time) / rate),
    breaks: [],
  };
  const lowestPosition = lowestOf(law, wishes);
  return {
    ...law,
    positionAtTouchdown,
    lowestPosition,
    fallStart: 0.9 * seconds,
    firstPeakTime: seconds / 2,
    springStiffnessPerKg: (peak * gravity) / (positionAtTouchdown - law.position(lowestPosition)),
  };
}

function lowestOf(law: Law, wishes: ContactWishes): number {
  const lowest = findRoot(law.velocity, 0, law.seconds);
  if (lowest === undefined) throw impossible(wishes, "no turning point");
  return lowest;
}

function impossible(wishes: ContactWishes, because: string): RangeError {
  return new RangeError(
    `No contact of shape ${wishes.shape.name} lasting ${wishes.seconds.toFixed(3)} s turns ${wishes.touchdownVelocity.toFixed(3)} m/s into ${wishes.takeoffVelocity.toFixed(3)} m/s: ${because}.`,
  );
}
