import type { Limb } from "../ground/limb.ts";
import type { Plate, PlateProof, Recording } from "./recording.ts";

/** The force of one plate over a whole recording, thinned out for drawing. */
export interface PlateOutline {
  readonly name: string;
  readonly limb: Limb;
  readonly proof: PlateProof;
  /** From the first sample, rising. */
  readonly seconds: Float64Array;
  /** Newtons, upward positive, as recorded. */
  readonly force: Float64Array;
}

/**
 * Keeps of each bucket of samples the smallest and the largest force in the order they came, so that no peak is lost.
 * @param most points kept, about
 */
export function outlinePlate({ name, limb, proof, force }: Plate, { rateHz }: Recording, most: number): PlateOutline {
  const kept: number[] = [];
  const buckets = Math.max(1, Math.min(most >> 1, force.length));
  for (let bucket = 0; bucket < buckets; bucket += 1) {
    const from = Math.floor((bucket * force.length) / buckets);
    const to = Math.floor(((bucket + 1) * force.length) / buckets);
    let lowest = from;
    let highest = from;
    for (let index = from + 1; index < to; index += 1) {
      if (force[index]! < force[lowest]!) lowest = index;
      if (force[index]! > force[highest]!) highest = index;
    }
    if (from === to) continue;
    kept.push(Math.min(lowest, highest));
    if (lowest !== highest) kept.push(Math.max(lowest, highest));
  }
  return {
    name,
    limb,
    proof,
    seconds: Float64Array.from(kept, (index) => index / rateHz),
    force: Float64Array.from(kept, (index) => force[index]!),
  };
}
