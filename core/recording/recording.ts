import type { Limb } from "../ground/limb.ts";

/** How it is known which foot stood on a plate (METHODS §8). `unproved` withholds every two-leg symmetry status. */
export type PlateProof = "single-leg-trial" | "one-leg-standing" | "layout" | "stated" | "unproved";

/** One force plate of a recording. */
export interface Plate {
  /** The column's own name, or `plate 1`, `plate 2` where the file names nothing. */
  readonly name: string;
  /** The limb the layout gives it; `both` when one plate carries the whole athlete. */
  readonly limb: Limb;
  readonly proof: PlateProof;
  /** Vertical ground reaction force in newtons, upward positive, unfiltered, one value a sample. */
  readonly force: Float64Array;
}

/** One file as physics: an even time base and one or two plates. Samples are joined by straight lines. */
export interface Recording {
  readonly rateHz: number;
  readonly sampleCount: number;
  /** The file's own first time stamp in seconds; 0 where it has none. Events are counted from the first sample. */
  readonly timeOriginSeconds: number;
  /** One or two plates, in the order of the file. */
  readonly plates: readonly Plate[];
}

/**
 * Why it is not known which foot stood on which plate: nothing proves it, or a stated limb or single-leg trials say
 * otherwise than the layout.
 */
export type FeetInDoubt = "unproved" | "contradicted";
