/** The sides of the body. */
export const sides = ["left", "right"] as const;

export type Side = (typeof sides)[number];

/** The limb or limbs a trial or a plate belongs to. */
export const limbs = [...sides, "both"] as const;

export type Limb = (typeof limbs)[number];

/** The limb that worked, or both together; every measure carries one. */
export type MeasureSide = Limb;

/**
 * Whose a value is: a limb's or, while nobody knows which foot stood where, that of a plate, by its place among the
 * trial's plates, counted from 1. Never both.
 */
export type Bearer<Sides extends MeasureSide = MeasureSide> =
  | { readonly side: Sides; readonly plate?: never }
  | { readonly plate: number; readonly side?: never };

/** Which side is involved. `none`: nobody is injured; `both`: both knees are involved, so no symmetry status exists. */
export const involvedSides = [...limbs, "none"] as const;

export type InvolvedSide = (typeof involvedSides)[number];

/** The other side of the body. */
export function oppositeSide(side: Side): Side {
  return side === "left" ? "right" : "left";
}
