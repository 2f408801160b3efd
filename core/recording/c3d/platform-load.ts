import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import type { Settings } from "../../settings/settings.ts";
import { type ForcePlatform, readForcePlatforms } from "./force-platform.ts";
import {
  directionOf,
  type LaboratoryAxis,
  type PlatformAxes,
  platformAxes,
  tiltDegrees,
  upwardAxis,
} from "./platform-axes.ts";
import { type PlatformForce, platformForce } from "./platform-force.ts";

/** A platform whose force can be read. */
export interface PlatformLoad {
  readonly platform: ForcePlatform;
  /** In the axes of the plate, as the file stores it, in its unit. */
  readonly force: PlatformForce;
  /** Absent where the corners span no plane; the plate is then taken as level. */
  readonly axes?: PlatformAxes;
  /** Between the plate's upwards and the laboratory's, degrees; 0 where the corners say nothing. */
  readonly tiltDegrees: number;
  /** True where the vertical part was taken along the laboratory's axis, because the plate is not level. */
  readonly isTilted: boolean;
  /** Vertical ground reaction force, upward positive, in the unit of the file. */
  readonly upward: Float64Array;
}

/** All platforms of a file with their loads. */
export interface PlatformLoads {
  readonly platforms: readonly ForcePlatform[];
  readonly loads: readonly PlatformLoad[];
  /** Undefined where no platform has corners. */
  readonly upwardAxis: LaboratoryAxis | undefined;
  /** −1: the file holds the reaction (a loaded plate is negative along its z); 1: the action of the foot. */
  readonly signToUp: -1 | 1;
}

/**
 * Loads of the platforms that can be read. A level plate is loaded along its own z axis; of a tilted one the part along
 * the laboratory's vertical is taken. One sign holds for the whole file.
 */
export function loadPlatforms(file: C3dFile, settings: Settings): PlatformLoads {
  const platforms = readForcePlatforms(file);
  const readable = platforms.flatMap((platform) => {
    if (platform.problem !== undefined) return [];
    const axes = platformAxes(platform.corners);
    return [{ platform, force: platformForce(file, platform), ...(axes === undefined ? {} : { axes }) }];
  });
  const axis = upwardAxis(readable.flatMap(({ axes }) => (axes === undefined ? [] : [axes])));
  const signToUp = fileSign(
    readable.map(({ force }) => force.z),
    settings,
  );
  const loads = readable.map((each): PlatformLoad => {
    const tilt = each.axes === undefined || axis === undefined ? 0 : tiltDegrees(each.axes, axis);
    const isTilted = tilt > settings.platformTiltDegrees && tilt < settings.platformSteepestDegrees;
    const upward =
      isTilted && each.axes !== undefined && axis !== undefined
        ? alongVertical(each.force, each.axes, axis, signToUp)
        : each.force.z.map((value) => (signToUp < 0 ? 0 - value : value));
    return { ...each, tiltDegrees: tilt, isTilted, upward };
  });
  return { platforms, loads, upwardAxis: axis, signToUp };
}

/** The part of the force along the laboratory's upwards. */
function alongVertical(
  { x, y, z }: PlatformForce,
  axes: PlatformAxes,
  axis: LaboratoryAxis,
  signToUp: -1 | 1,
): Float64Array {
  const up = directionOf(axis);
  const part = (own: readonly number[]): number => own.reduce((total, value, index) => total + value * up[index]!, 0);
  const [alongX, alongY, alongZ] = [part(axes.x), part(axes.y), part(axes.z)];
  // As stored the reaction points up in the laboratory already; the action has to be turned.
  return z.map((value, sample) => -signToUp * (alongX * x[sample]! + alongY * y[sample]! + alongZ * value));
}

/**
 * The sign of the largest force of all platforms, because offsets make means useless. A single sample does not count:
 * of each sample and its neighbours the middle one is taken. The C3D guide asks for the reaction, so an unloaded file is
 * taken as that.
 */
function fileSign(forces: readonly Float64Array[], settings: Settings): -1 | 1 {
  let largest = 0;
  for (const force of forces) {
    for (let index = 1; index < force.length - 1; index++) {
      const middle = middleOf(force[index - 1]!, force[index]!, force[index + 1]!);
      if (Math.abs(middle) > Math.abs(largest)) largest = middle;
    }
  }
  return largest >= settings.platformSignNewtons ? 1 : -1;
}

/** The middle one of three; NaN where one of them is no number. */
function middleOf(one: number, two: number, three: number): number {
  return Math.max(Math.min(one, two), Math.min(Math.max(one, two), three));
}
