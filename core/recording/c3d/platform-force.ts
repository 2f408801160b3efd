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
  const inputs = platform.channels.map((channel) => channelValues(file, channel));
  switch (platform.type) {
    case 3:
      // Fx12 Fx34 Fy14 Fy23 Fz1 Fz2 Fz3 Fz4
      return { x: sum(inputs, [0, 1]), y: sum(inputs, [2, 3]), z: sum(inputs, [4, 5, 6, 7]) };
    case 4: {
      const { calibration } = platform;
      const weights = (row: number): number[] =>
        inputs.map((_, column) => (calibration.length === 0 ? Number(row === column) : calibration[6 * column + row]!));
      return { x: weighted(inputs, weights(0)), y: weighted(inputs, weights(1)), z: weighted(inputs, weights(2)) };
    }
    default:
      return { x: inputs[0]!, y: inputs[1]!, z: inputs[2]! };
  }
}

function sum(inputs: readonly Float64Array[], chosen: readonly number[]): Float64Array {
  return weighted(
    chosen.map((index) => inputs[index]!),
    chosen.map(() => 1),
  );
}

function weighted(inputs: readonly Float64Array[], weights: readonly number[]): Float64Array {
  const [first] = inputs;
  return Float64Array.from({ length: first?.length ?? 0 }, (_, sample) =>
    inputs.reduce((total, input, index) => total + weights[index]! * input[sample]!, 0),
  );
}
