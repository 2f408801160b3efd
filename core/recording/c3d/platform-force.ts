import { channelValues } from "../../bytes/c3d/analog-samples.ts";
import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import type { ForcePlatform } from "./force-platform.ts";

/** Force in the axes of the plate, one value a sample. */
export interface PlatformForce {
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly z: Float64Array;
}

/** The force of a platform that can be read, by its type (C3D user guide, FORCE_PLATFORM). */
export function platformForce(file: C3dFile, platform: ForcePlatform): PlatformForce {
  // Only the channels that carry force are read.
  const input = (index: number): Float64Array => channelValues(file, platform.channels[index]!);
  switch (platform.type) {
    case 3:
      // Fx12 Fx34 Fy14 Fy23 Fz1 Fz2 Fz3 Fz4
      return {
        x: sum([input(0), input(1)]),
        y: sum([input(2), input(3)]),
        z: sum([input(4), input(5), input(6), input(7)]),
      };
    case 4: {
      const { calibration, channels } = platform;
      const inputs = channels.map((_, index) => input(index));
      const row = (of: number): Float64Array =>
        weighted(
          inputs,
          inputs.map((_, column) => (calibration.length === 0 ? Number(of === column) : calibration[6 * column + of]!)),
        );
      return { x: row(0), y: row(1), z: row(2) };
    }
    default:
      return { x: input(0), y: input(1), z: input(2) };
  }
}

function sum(inputs: readonly Float64Array[]): Float64Array {
  return weighted(
    inputs,
    inputs.map(() => 1),
  );
}

function weighted(inputs: readonly Float64Array[], weights: readonly number[]): Float64Array {
  const total = new Float64Array(inputs[0]?.length ?? 0);
  for (const [index, input] of inputs.entries()) {
    const weight = weights[index]!;
    for (let sample = 0; sample < total.length; sample++) total[sample] = total[sample]! + weight * input[sample]!;
  }
  return total;
}
