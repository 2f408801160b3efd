import { type ChoiceSetting, number } from "./setting-entry.ts";

/** Settings of the comparison of sides and of criteria. */
export const settingsOfSides = {
  trialStatistic: {
    default: "mean",
    choices: ["mean", "best", "median"],
    reason: "What stands for the trials of a side.",
  } as ChoiceSetting,
  statusConfidence: number(
    0.8,
    "1",
    0.5,
    0.99,
    "Two-sided confidence of the interval that decides a status; with four trials a 95 % rule leaves most undecided.",
  ),
  drawnConfidence: number(0.95, "1", 0.5, 0.999, "Two-sided confidence of the second interval that is drawn."),
  overstatesFraction: number(
    0.9,
    "1",
    0.5,
    1,
    "A limb below this part of its reference makes a met symmetry overstate recovery.",
  ),
  indexHighPercent: number(110, "%", 100, 150, "Above this index the comparison limb is lower: not simply met."),
  heightIndicesSd: number(
    2,
    "1",
    1,
    5,
    "Symmetry of height by impulse and by flight time contradict each other beyond this many joint standard uncertainties.",
  ),
  landingPostureMetres: number(
    0.01,
    "m",
    0,
    0.05,
    "Legs may land with the body lower or higher by this much (SD of the difference between a person's legs), which flight time takes for height.",
  ),
  dropHeightLegsTolerance: number(
    0.1,
    "1",
    0.02,
    0.5,
    "Effective drop heights of the two legs may differ by this part of the larger before single-leg trials stop being comparable.",
  ),
  leadingLegTouchdownSeconds: number(
    0.005,
    "s",
    0.002,
    0.05,
    "The other foot landing this much before the stated leading leg contradicts the statement; feet that land together differ by less.",
  ),
  leadingLegSd: number(3, "1", 1, 10, "That difference must also exceed this many of its own standard uncertainties."),
} as const;
