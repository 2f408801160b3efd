/** How a limb is drawn. Only an injured athlete's limbs are coloured; a healthy pair is drawn in ink. */

export type LimbRole = "involved" | "uninvolved" | "left" | "right" | "plate-1" | "plate-2" | "total";
