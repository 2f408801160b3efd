import type { Displacement } from "./displacement.ts";
import type { Law } from "./law.ts";
import { rememberLast } from "./remember-last.ts";

/** One law on the recording's clock. */
export interface Stretch {
  readonly law: Law;
  readonly start: number;
  readonly end: number;
}

/** A body that follows one law after another; every function is a closed form of time on the recording's clock. */
export interface Course {
  readonly massKg: number;
  readonly gravity: number;
  readonly weightNewtons: number;
  /** Force that moves the body: mass times (gravity + acceleration); zero in the air and on the box. */
  force(time: number): number;
  velocity(time: number): number;
  position(time: number): number;
  /** Where a derivative of the force jumps. */
  readonly breaks: readonly number[];
}

/** Puts laws one after the other from a start. */
export function joinLaws(laws: readonly Law[], start: number): readonly Stretch[] {
  let time = start;
  return laws.map((law) => {
    const from = time;
    time += law.seconds;
    return { law, start: from, end: time };
  });
}

/**
 * Builds the body. The extra displacement (sway) is added to the laws and must be at rest wherever a law's velocity
 * has to be met exactly. Before the first and after the last stretch the ends hold.
 */
export function buildCourse(
  massKg: number,
  gravity: number,
  stretches: readonly Stretch[],
  extra: Displacement,
): Course {
  const weightNewtons = massKg * gravity;
  const last = stretches[stretches.length - 1];
  if (last === undefined) throw new RangeError("A course needs at least one stretch.");
  const at = (time: number): Stretch => stretches.find((each) => time < each.end) ?? last;
  const read = (time: number, of: (law: Law, local: number) => number): number => {
    const { law, start } = at(time);
    return of(law, Math.min(Math.max(time - start, 0), law.seconds));
  };
  return {
    massKg,
    gravity,
    weightNewtons,
    force: rememberLast((time) =>
      at(time).law.airborne === true
        ? 0
        : weightNewtons * read(time, (law, local) => law.force(local)) + massKg * extra.acceleration(time),
    ),
    velocity: (time) => read(time, (law, local) => law.velocity(local)) + extra.velocity(time),
    position: (time) => read(time, (law, local) => law.position(local)) + extra.position(time),
    breaks: [
      ...stretches.flatMap(({ law, start, end }) => [start, ...law.breaks.map((each) => start + each), end]),
      ...extra.breaks,
    ],
  };
}
