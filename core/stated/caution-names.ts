/** The questions of yes and no before jump testing after a knee injury, by stable public names. */
export const cautionNames = [
  "feverOrWound",
  "givingWay",
  "locking",
  "newInjuryOrIllness",
  "calfPainOrBreathlessness",
  "restriction",
  "landingPractice",
  "painkiller",
] as const;

export type CautionName = (typeof cautionNames)[number];
