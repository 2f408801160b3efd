import { number } from "./setting-entry.ts";

/** Settings of flat tops, where the range of an amplifier was exceeded. */
export const settingsOfTops = {
  clippedSamples: number(
    5,
    "1",
    3,
    100,
    "This many equal samples at the maximum are a flat top: the range of the amplifier was exceeded.",
  ),
  clippedCoarsestStepNewtons: number(
    5,
    "N",
    0.5,
    50,
    "A converter with coarser steps than this is none: equal samples are then written so.",
  ),
  clippedRoundedTopSteps: number(
    12,
    "1",
    4,
    50,
    "A rounded top has fallen by no more steps than this on average, half its length beyond its ends: four, and room for noise.",
  ),
  clippedTouchingFraction: number(
    0.2,
    "1",
    0.05,
    0.5,
    "A plate that carries less than this part of the standing load is only touched, and never exceeds its range.",
  ),
  clippedAboveStandingRatio: number(
    1.05,
    "1",
    1,
    1.5,
    "A flat top lies above quiet standing by this ratio at least: standing still is no exceeded range.",
  ),
  limitedBandDeviations: number(
    4,
    "1",
    2,
    10,
    "A noisy top is flat within this many deviations of the plate's noise on either side.",
  ),
  limitedTopSeconds: number(0.012, "s", 0.004, 0.1, "A shorter top cannot be told from a rounded one beneath noise."),
  limitedBesideSeconds: number(
    0.02,
    "s",
    0.005,
    0.1,
    "Force beside the corner of a flat top is looked at over this long.",
  ),
  limitedLeastFallBands: number(
    2,
    "1",
    1,
    10,
    "It must fall there by so many bands, or there is no corner to be seen.",
  ),
  limitedCornerRatio: number(
    2,
    "1",
    1.1,
    10,
    "A straight flank fits beside a corner; one that bends away gently leaves this many times as much beside it.",
  ),
} as const;
