/** Parts of the body that an injury or operation may name. */

export const bodyParts = ["knee", "hip", "thigh", "lower leg", "ankle", "foot", "other"] as const;

export type BodyPart = (typeof bodyParts)[number];
