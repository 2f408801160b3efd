import type { PlateUsed } from "../result/trial-result.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

/** The plates under a trial, each with the zero that was taken off it. */
export function platesUsed({ recording, forces }: PreparedRecording, atSample: number): readonly PlateUsed[] {
  return recording.plates.map(({ name, limb, proof, force }, index) => {
    const zeroed = forces[index]!;
    return {
      name,
      limb,
      proof,
      ...(zeroed === force ? {} : { zeroNewtons: micronewtons(force[atSample]! - zeroed[atSample]!) }),
    };
  });
}

/** A difference of two forces; its digits below a millionth of a newton are rounding. */
function micronewtons(newtons: number): number {
  return Math.round(newtons * 1e6) / 1e6;
}
