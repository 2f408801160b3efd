import { number } from "./setting-entry.ts";

/** Settings of a session's weight, its plates against each other and who may have stood on them. */
export const settingsOfWeight = {
  weightDiffersFraction: number(
    0.003,
    "1",
    0.0005,
    0.05,
    "A trial's weight differs from what the session's other trials say only beyond this part of it.",
  ),
  weightDiffersSd: number(3, "1", 1, 10, "That difference must also exceed this many joint standard uncertainties."),
  weightScatterTypical: number(
    0.0005,
    "1",
    0.00005,
    0.01,
    "Typical scatter of weight between the trials of a session beyond the weighings' own uncertainty (median of the prior).",
  ),
  weightScatterLogSd: number(0.8, "1", 0.1, 3, "Standard deviation of the logarithm of that scatter (prior)."),
  weightScatterLeast: number(0.0001, "1", 0.00001, 0.001, "Least scatter between trials that is reckoned with."),
  weightScatterMost: number(0.006, "1", 0.001, 0.05, "Largest scatter between trials that is reckoned with."),
  plateGainTolerance: number(
    0.005,
    "1",
    0.0005,
    0.05,
    "Standard deviation of a plate's gain before the session's standing is looked at: tolerance of its calibration.",
  ),
  plateGainFinding: number(
    0.003,
    "1",
    0.0005,
    0.05,
    "Plates that read this part apart, and more than two standard uncertainties, disagree.",
  ),
  plateGainNoStatus: number(
    0.01,
    "1",
    0.001,
    0.1,
    "Plates that read more than this part apart give no symmetry of forces a status.",
  ),
  anotherAthleteFraction: number(
    0.03,
    "1",
    0.01,
    0.2,
    "Weights of one session further apart than this part, plates allowed for, are not one person's (common practice).",
  ),
  massChangeFraction: number(
    0.05,
    "1",
    0.01,
    0.3,
    "Body mass further than this part from the last session's is asked about (common practice).",
  ),
  massChangeDays: number(56, "d", 7, 365, "Only a session within so many days before is held against (eight weeks)."),
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
} as const;
