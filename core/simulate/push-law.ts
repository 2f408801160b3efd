import type { PiecewisePolynomial } from "./piecewise.ts";
import { evaluatePiecewise, hermitePiece, joinPieces } from "./piecewise.ts";
import type { PushShape } from "./shapes.ts";
import type { Motion } from "./solve.ts";
import { findRoot, moveUnder, solveTwoAmplitudes } from "./solve.ts";

/** What a push has to reach. SI units; force as a part of body weight. */
export interface PushWishes {
  readonly shape: PushShape;
  readonly gravity: number;
  /** First movement to take-off. */
  readonly seconds: number;
  readonly takeoffVelocity: number;
  readonly positionAtTakeoff: number;
  /** Absent: the unweighting minimum decides the depth. */
  readonly depthMetres?: number;
  /** Least force of the unweighting in body weights, where no depth is asked for. */
  readonly minimum: number;
  /** Rate of the last, straight fall to zero, in body weights a second. */
  readonly fallPerSecond: number;
  /** Force at which the straight fall begins, in body weights. */
  readonly kneeForce: number;
  /** A short rise before the dip: height in body weights and its length. */
  readonly riseBeforeDip?: { readonly weightFraction: number; readonly seconds: number };
}

/** A push that meets its wishes exactly. Times from first movement. */
export interface PushLaw {
  readonly force: PiecewisePolynomial;
  readonly motion: Motion;
  /** Where the force begins to rise from the unweighting minimum, and where it reaches its first peak. */
  readonly riseStart: number;
  readonly riseEnd: number;
  /** The straight fall to zero. */
  readonly fallStart: number;
  readonly lowestPosition: number;
  readonly depthMetres: number;
  readonly unweightingMinimum: number;
}

const kneeSeconds = 0.06;
/** A peak is approached in two eases: a truly flat top would be the mark of a clipped recording. */
const nearlyPeak = 0.95;
const leastForce = 0.05;
const mostForce = 4.5;

/**
 * Solves a push: for a given length of unweighting, the two peak heights follow from take-off velocity and position
 * (linear), the unweighting minimum from the depth (one root), and the length of unweighting from the balance the
 * shape asks for (one root, only as good as the shape needs).
 * @throws RangeError when no force between 0.05 and 4.5 body weights makes this jump.
 */
export function solvePush(wishes: PushWishes): PushLaw {
  const minimumFor = (unweighting: number): number | undefined => {
    if (wishes.depthMetres === undefined) return wishes.minimum;
    const wanted = wishes.depthMetres;
    return findRoot((minimum) => pushWith(wishes, unweighting, minimum).depthMetres - wanted, leastForce, 0.97);
  };
  const attempt = (unweighting: number): PushLaw | undefined => {
    const minimum = minimumFor(unweighting);
    return minimum === undefined ? undefined : pushWith(wishes, unweighting, minimum);
  };
  const candidates: { unweighting: number; law: PushLaw; imbalance: number }[] = [];
  for (let part = 0.11; part <= 0.56; part += 0.03) {
    const law = attempt(part * wishes.seconds);
    if (law === undefined || !isPossible(law)) continue;
    candidates.push({ unweighting: part * wishes.seconds, law, imbalance: imbalanceOf(wishes.shape, law) });
  }
  const crossing = candidates.findIndex((each, index) => {
    const next = candidates[index + 1];
    return next !== undefined && each.imbalance <= 0 && next.imbalance > 0;
  });
  const from = candidates[crossing];
  const to = candidates[crossing + 1];
  let best = candidates.reduce<(typeof candidates)[number] | undefined>(
    (kept, each) => (kept === undefined || Math.abs(each.imbalance) < Math.abs(kept.imbalance) ? each : kept),
    undefined,
  );
  if (from !== undefined && to !== undefined) {
    let low = from.unweighting;
    let high = to.unweighting;
    for (let step = 0; step < 8; step++) {
      const unweighting = (low + high) / 2;
      const law = attempt(unweighting);
      if (law === undefined || !isPossible(law)) break;
      best = { unweighting, law, imbalance: imbalanceOf(wishes.shape, law) };
      if (best.imbalance <= 0) low = unweighting;
      else high = unweighting;
    }
  }
  if (best === undefined) {
    throw new RangeError(
      `No push of shape ${wishes.shape.name} lasting ${wishes.seconds} s reaches ${wishes.takeoffVelocity.toFixed(3)} m/s` +
        `${wishes.depthMetres === undefined ? "" : ` from ${wishes.depthMetres} m`} with a force between ${leastForce} and ${mostForce} body weights.`,
    );
  }
  return best.law;
}

/** The law for one length of unweighting and one minimum; take-off velocity and position are met exactly. */
function pushWith(wishes: PushWishes, unweighting: number, minimum: number): PushLaw {
  const { shape, fallPerSecond, kneeForce, gravity, seconds } = wishes;
  const rise = wishes.riseBeforeDip ?? { weightFraction: 0, seconds: 0 };
  const fallSeconds = kneeForce / fallPerSecond;
  const rest = seconds - rise.seconds - unweighting - kneeSeconds - fallSeconds;
  const part = (index: number): number => rest * (shape.parts[index] ?? 0);
  const law = (braking: number, propulsion: number): PiecewisePolynomial => {
    const valley = 1 + (shape.valley * (braking + propulsion)) / 2;
    return joinPieces([
      hermitePiece(rise.seconds / 2, 1, 1 + rise.weightFraction),
      hermitePiece(rise.seconds / 2, 1 + rise.weightFraction, 1),
      hermitePiece(unweighting * shape.dipFraction, 1, minimum),
      hermitePiece(unweighting * (1 - shape.dipFraction), minimum, minimum),
      hermitePiece(part(0), minimum, 1 + nearlyPeak * braking),
      hermitePiece(part(1), 1 + nearlyPeak * braking, 1 + braking),
      hermitePiece(part(2), 1 + braking, valley),
      hermitePiece(part(3), valley, valley),
      hermitePiece(part(4), valley, 1 + nearlyPeak * propulsion),
      hermitePiece(part(5), 1 + nearlyPeak * propulsion, 1 + propulsion),
      hermitePiece(kneeSeconds, 1 + propulsion, kneeForce, 0, -fallPerSecond),
      { seconds: fallSeconds, coefficients: [kneeForce, -fallPerSecond] },
    ]);
  };
  const ends = (force: PiecewisePolynomial): Motion => moveUnder(force, gravity, 0, 0);
  const [braking, propulsion] = solveTwoAmplitudes(law, ends, wishes.takeoffVelocity, wishes.positionAtTakeoff);
  const force = law(braking, propulsion);
  const motion = ends(force);
  const riseStart = rise.seconds + unweighting;
  const lowestPosition =
    findRoot((time) => evaluatePiecewise(motion.velocity, time), riseStart, force.seconds) ?? Number.NaN;
  return {
    force,
    motion,
    riseStart,
    riseEnd: riseStart + part(0),
    fallStart: force.seconds - fallSeconds,
    lowestPosition,
    depthMetres: -evaluatePiecewise(motion.position, lowestPosition),
    unweightingMinimum: minimum,
  };
}

/** Negative while the unweighting is too short for the balance the shape asks for. */
function imbalanceOf(shape: PushShape, law: PushLaw): number {
  const span = law.fallStart - kneeSeconds - law.riseStart;
  const after = (parts: number): number =>
    law.riseStart + span * shape.parts.slice(0, parts).reduce<number>((sum, part) => sum + part, 0);
  if (shape.balance.kind === "lowest-in-valley") return (after(3) + after(4)) / 2 - law.lowestPosition;
  const braking = evaluatePiecewise(law.force, after(2)) - 1;
  const propulsion = evaluatePiecewise(law.force, law.fallStart - kneeSeconds) - 1;
  return braking - shape.balance.brakingOverPropulsion * propulsion;
}

/** Force stays on the plate until take-off, above the knee until the fall, and within what legs can do. */
function isPossible(law: PushLaw): boolean {
  if (!Number.isFinite(law.lowestPosition) || law.force.pieces.some((piece) => piece.seconds < 0)) return false;
  const riseEndForce = evaluatePiecewise(law.force, law.riseEnd);
  const lateForce = evaluatePiecewise(law.force, law.fallStart - kneeSeconds);
  if (riseEndForce < 1.02 || lateForce < 1.1) return false;
  for (let time = 0; time < law.fallStart; time += 0.004) {
    const force = evaluatePiecewise(law.force, time);
    if (force < leastForce - 1e-9 || force > mostForce) return false;
  }
  return true;
}
