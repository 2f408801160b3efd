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

/** Effusion grades in rising order. */
export const effusionGrades = ["none", "trace", "1+", "2+", "3+"] as const;

export type EffusionGrade = (typeof effusionGrades)[number];

/** Moments of a session at which pain and effusion are read; `nextDay` is the knee's response a day later. */
export const readingMoments = ["before", "during", "after", "nextDay"] as const;

export type ReadingMoment = (typeof readingMoments)[number];

/** Why a session was stopped; the knee and the athlete close the gate, time and equipment do not. */
export const stopKinds = ["knee", "athlete", "time", "equipment"] as const;
