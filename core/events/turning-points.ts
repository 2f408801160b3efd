import { forceAt } from "../trial/force-signal.ts";
import { type Kinematics, positionAtSample, velocityAt, velocityAtSample } from "./kinematics.ts";

/** Index of the sample with the lowest position in [from, to]. */
export function lowestPositionIndex(motion: Kinematics, from: number, to: number): number {
  return extremeIndex(motion, from, to, positionAtSample);
}

/** Index of the sample with the most negative velocity in [from, to]. */
export function lowestVelocityIndex(motion: Kinematics, from: number, to: number): number {
  return extremeIndex(motion, from, to, velocityAtSample);
}

function extremeIndex(
  motion: Kinematics,
  from: number,
  to: number,
  valueAt: (motion: Kinematics, sample: number) => number,
): number {
  let best = from;
  let least = Number.POSITIVE_INFINITY;
  for (let index = from; index <= to; index += 1) {
    const value = valueAt(motion, index);
    if (value < least) {
      least = value;
      best = index;
    }
  }
  return best;
}

/**
 * The fractional sample near `near` at which force returns to body weight from below: the most negative velocity.
 * @returns undefined when force does not rise through weight within `reach` samples.
 */
export function weightCrossing(motion: Kinematics, near: number, reach: number): number | undefined {
  return nearestRise(near, reach, motion, (sample) => forceAt(motion.signal, sample) - motion.weightNewtons);
}

/**
 * The fractional sample near `near` at which velocity rises through zero: the lowest position, or the landing's end.
 * @returns undefined when it does not within `reach` samples.
 */
export function velocityCrossing(motion: Kinematics, near: number, reach: number): number | undefined {
  return nearestRise(near, reach, motion, (sample) => velocityAt(motion, sample));
}

/** Searches outwards from `near` for the closest segment in which `value` rises through zero, and solves it there. */
function nearestRise(
  near: number,
  reach: number,
  motion: Kinematics,
  value: (sample: number) => number,
): number | undefined {
  const first = motion.startSample;
  const last = first + motion.impulse.length - 1;
  const centre = Math.floor(near);
  for (let distance = 0; distance <= reach; distance += 1) {
    for (const start of distance === 0 ? [centre] : [centre - distance, centre + distance]) {
      if (start < first || start + 1 > last) continue;
      const below = value(start);
      const above = value(start + 1);
      if (below < 0 && above >= 0) return solveRise(start, below, above, value);
    }
  }
  return undefined;
}

/** Root inside one sample by the Illinois form of false position: bracketed, and exact for straight lines. */
function solveRise(start: number, valueAtStart: number, valueAtEnd: number, value: (sample: number) => number): number {
  let low = start;
  let high = start + 1;
  let lowValue = valueAtStart;
  let highValue = valueAtEnd;
  if (highValue === 0) return high;
  let side = 0;
  for (let round = 0; round < 60; round += 1) {
    const middle = (low * highValue - high * lowValue) / (highValue - lowValue);
    const middleValue = value(middle);
    if (middleValue === 0 || middle <= low || middle >= high) return middle;
    if (middleValue < 0) {
      low = middle;
      lowValue = middleValue;
      if (side === -1) highValue /= 2;
      side = -1;
    } else {
      high = middle;
      highValue = middleValue;
      if (side === 1) lowValue /= 2;
      side = 1;
    }
    if (high - low < 1e-9) return (low + high) / 2;
  }
  return (low + high) / 2;
}
