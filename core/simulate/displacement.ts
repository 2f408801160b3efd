/**
 * A small vertical movement of the centre of mass on top of the intended one. Because it is a displacement, its
 * second derivative can be added to the acceleration and the body never drifts away.
 */
export interface Displacement {
  /** Metres, metres a second, metres a second squared at a time in seconds on the recording's clock. */
  position(time: number): number;
  velocity(time: number): number;
  acceleration(time: number): number;
  /** Times at which a higher derivative jumps; integrals are split there. */
  readonly breaks: readonly number[];
}

/** A function with its first two derivatives. */
export type Jet = readonly [value: number, first: number, second: number];

/** The quintic step from 0 to 1: value, first and second derivative are continuous at both ends. */
export function quinticStep(time: number, start: number, seconds: number): Jet {
  const u = (time - start) / seconds;
  if (u <= 0) return [0, 0, 0];
  if (u >= 1) return [1, 0, 0];
  return [
    u * u * u * (10 + u * (6 * u - 15)),
    (30 * u * u * (1 - u) * (1 - u)) / seconds,
    (60 * u * (1 - u) * (1 - 2 * u)) / (seconds * seconds),
  ];
}

/** The bump 64 u³(1 − u)³ of height 1: value, first and second derivative are zero at both ends. */
export function smoothBump(time: number, start: number, seconds: number): Jet {
  const u = (time - start) / seconds;
  if (u <= 0 || u >= 1) return [0, 0, 0];
  const w = u * (1 - u);
  const slope = 1 - 2 * u;
  return [64 * w * w * w, (192 * w * w * slope) / seconds, (384 * w * (slope * slope - w)) / (seconds * seconds)];
}

/** A slow rise and return of the centre of mass, such as shifting the weight from foot to foot makes. */
export function bumpDisplacement(metres: number, start: number, seconds: number): Displacement {
  return {
    position: (time) => metres * smoothBump(time, start, seconds)[0],
    velocity: (time) => metres * smoothBump(time, start, seconds)[1],
    acceleration: (time) => metres * smoothBump(time, start, seconds)[2],
    breaks: [start, start + seconds],
  };
}

/** Several displacements at once. */
export function sumDisplacements(parts: readonly Displacement[]): Displacement {
  const total = (time: number, read: (part: Displacement) => number): number => {
    if (!Number.isFinite(time)) return Number.NaN;
    let sum = 0;
    for (const part of parts) sum += read(part);
    return sum;
  };
  return {
    position: (time) => total(time, (part) => part.position(time)),
    velocity: (time) => total(time, (part) => part.velocity(time)),
    acceleration: (time) => total(time, (part) => part.acceleration(time)),
    breaks: parts.flatMap((part) => part.breaks),
  };
}
