/** A side of the body. */
export type Side = "left" | "right";

/** The limb or limbs a trial or a plate belongs to. */
export type Limb = Side | "both";

/** The limb that worked, or both together; every measure carries one. */
export type MeasureSide = Limb;

/** Which side is involved. `none`: nobody is injured; `both`: both knees are involved, so no symmetry status exists. */
export type InvolvedSide = Side | "both" | "none";

/** The other side of the body. */
export function oppositeSide(side: Side): Side {
  return side === "left" ? "right" : "left";
}
