import type { Bearer } from "../../ground/limb.ts";

/** "plate 1": a plate by its place, because its name may say a foot that nobody has proved. */
const plate = (place: number): string => `plate ${place}`;

/** How limbs and plates are called. */
export const limbs = {
  plate,
  /** "right", "both", "plate 1". */
  bearer: (bearer: Bearer): string => bearer.side ?? plate(bearer.plate),
};
