import { cross, minus, unit, type Vector } from "./vector.ts";

/** Axes of a platform in the laboratory, each of length 1; z points away from the working surface, into the plate. */
export interface PlatformAxes {
  readonly x: Vector;
  readonly y: Vector;
  readonly z: Vector;
}

/** An axis of the laboratory with its sense. */
export type LaboratoryAxis = "+X" | "-X" | "+Y" | "-Y" | "+Z" | "-Z";

/**
 * Axes from the corners, which stand in the plate's quadrants +x+y, −x+y, −x−y, +x−y (C3D user guide, CORNERS).
 * Undefined where the corners span no plane.
 */
export function platformAxes(corners: readonly Vector[]): PlatformAxes | undefined {
  const [first, second, , fourth] = corners;
  if (first === undefined || second === undefined || fourth === undefined) return undefined;
  const along = minus(first, second);
  const x = unit(along);
  const z = unit(cross(along, minus(first, fourth)));
  if (x === undefined || z === undefined) return undefined;
  return { x, y: cross(z, x), z };
}

/** The laboratory's axis nearest to upwards of most platforms, of the first ones where they differ evenly. */
export function upwardAxis(platforms: readonly PlatformAxes[]): LaboratoryAxis | undefined {
  const votes = new Map<LaboratoryAxis, number>();
  for (const axes of platforms) {
    const own = nearestAxis(axes);
    votes.set(own, (votes.get(own) ?? 0) + 1);
  }
  let best: LaboratoryAxis | undefined;
  for (const [axis, count] of votes) if (best === undefined || count > votes.get(best)!) best = axis;
  return best;
}

function nearestAxis({ z }: PlatformAxes): LaboratoryAxis {
  const [x, y] = [Math.abs(z[0]), Math.abs(z[1])];
  const axis = x > y && x > Math.abs(z[2]) ? 0 : y > Math.abs(z[2]) ? 1 : 2;
  return `${z[axis] < 0 ? "+" : "-"}${(["X", "Y", "Z"] as const)[axis]}`;
}

export function directionOf(axis: LaboratoryAxis): Vector {
  const value = axis.startsWith("+") ? 1 : -1;
  return axis.endsWith("X") ? [value, 0, 0] : axis.endsWith("Y") ? [0, value, 0] : [0, 0, value];
}

/** Degrees between upwards of the laboratory and upwards of a platform. */
export function tiltDegrees({ z }: PlatformAxes, axis: LaboratoryAxis): number {
  const up = directionOf(axis);
  const cosine = -(z[0] * up[0] + z[1] * up[1] + z[2] * up[2]);
  return (Math.acos(Math.max(-1, Math.min(1, cosine))) * 180) / Math.PI;
}
