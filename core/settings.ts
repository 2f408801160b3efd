import { sha256Hex } from "./sha256.ts";

/** One entry of the settings catalogue: everything a reader needs to judge a number that is not in the recording. */
interface NumberSetting {
  readonly default: number;
  /** UCUM unit, `1` for a pure number. */
  readonly unit: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly reason: string;
}

interface ChoiceSetting {
  readonly default: string;
  readonly choices: readonly string[];
  readonly reason: string;
}

const number = (value: number, unit: string, minimum: number, maximum: number, reason: string): NumberSetting => ({
  default: value,
  unit,
  minimum,
  maximum,
  reason,
});

/**
 * The one place for every number of the methods that is a choice (METHODS §11). Names are public. Physical facts
 * (rate, unit, mass, side) are never here: they are asked for.
 */
export const settingsCatalogue = {
  gravity: number(
    9.80665,
    "m/s2",
    9.7,
    9.9,
    "Standard acceleration of gravity, 3rd CGPM 1901; local values from latitude and altitude.",
  ),
  weighingSeconds: number(1.0, "s", 0.3, 5, "One second of quiet standing before the jump (Owen et al. 2014)."),
  weighingAlike: number(
    1.2,
    "1",
    1,
    2,
    "After a landing the first second whose force SD is within this factor of the steadiest one weighs, because a shorter integration drifts less (simulated drop jumps).",
  ),
  weighingShortSeconds: number(0.3, "s", 0.1, 1, "Shorter quiet standing is used only with a strong warning."),
  weighingMinimumSeconds: number(0.1, "s", 0.05, 1, "Below this, weight is not measured unless the mass is given."),
  weighingRestlessFraction: number(
    0.02,
    "1",
    0.005,
    0.1,
    "Force SD in the weighing window, as a part of weight, above which standing was restless.",
  ),
  weighingSwayVelocity: number(
    0.005,
    "m/s",
    0,
    0.05,
    "Sway velocity (SD) that one weighing window cannot show because it is slower than the window; calibrated on simulated standing.",
  ),
  weighingSwayDisplacement: number(
    0.0005,
    "m",
    0,
    0.01,
    "Sway displacement (SD) that one weighing window cannot show; calibrated on simulated standing.",
  ),
  weighingFloorFraction: number(
    0.0002,
    "1",
    0,
    0.01,
    "Least relative uncertainty of a weighing, for sway too slow to show inside one window.",
  ),
  quietSecondsAfter: number(0.5, "s", 0.1, 3, "Quiet standing wanted after the landing."),
  quietBandFraction: number(
    0.04,
    "1",
    0.01,
    0.15,
    "Standing counts as quiet while the 50 ms mean force stays within this part of the standing load.",
  ),
  quietBlockSeconds: number(0.05, "s", 0.02, 0.2, "Length of the running mean used by the coarse segmentation."),
  emptyMinimumNewtons: number(
    20,
    "N",
    5,
    100,
    "A plate counts as empty below the larger of this and the fraction below.",
  ),
  emptyLoadFraction: number(
    0.05,
    "1",
    0.01,
    0.2,
    "A plate counts as empty below this part of the largest steady load.",
  ),
  emptyHysteresisFraction: number(
    0.5,
    "1",
    0.1,
    1,
    "Hysteresis of the empty threshold: loaded again only above it, empty again only below this part of it.",
  ),
  flightMinimumSeconds: number(
    0.1,
    "s",
    0.05,
    0.3,
    "Shorter empty stretches between loaded ones are not a jump's flight.",
  ),
  flightMaximumSeconds: number(
    1.2,
    "s",
    0.8,
    2,
    "Longer empty stretches are stepping off, not flight (1.2 s is a jump of 1.77 m).",
  ),
  takeoffVelocityMinimum: number(
    0.5,
    "m/s",
    0.1,
    1.5,
    "Where no landing follows, the plate must be left upwards at this speed: somebody who steps off is not jumping.",
  ),
  fallMinimumSeconds: number(
    0.05,
    "s",
    0.02,
    0.5,
    "The plate must be empty this long before a contact for somebody to have dropped onto it.",
  ),
  dropContactMaximumSeconds: number(
    1,
    "s",
    0.4,
    3,
    "A longer contact between an empty plate and a flight is a jump from the plate, not a drop jump.",
  ),
  landingImpactWeights: number(
    1.5,
    "1",
    1.2,
    3,
    "A drop landing peaks at this many standing loads at least; stepping onto the plate stays below.",
  ),
  brokenOffFraction: number(
    0.2,
    "1",
    0.05,
    0.5,
    "A movement whose force dips and rises by this part of the standing load without a flight was broken off.",
  ),
  bounceFraction: number(
    0.6,
    "1",
    0.2,
    0.9,
    "A flight after the landing shorter than this part of the first is a bounce, not a jump.",
  ),
  plateOffsetSeconds: number(
    0.3,
    "s",
    0.05,
    5,
    "Empty stretch needed to read a plate's zero before stepping on or after stepping off.",
  ),
  plateOffsetNewtons: number(10, "N", 1, 100, "A plate zero larger than this is reported."),
  plateDriftNewtons: number(
    1,
    "N",
    0.1,
    50,
    "A plate's zero that moves by at least this much between empty stretches is a drift; it is removed and reported.",
  ),
  plateDriftSd: number(
    5,
    "1",
    1,
    20,
    "A drift must be this many of its own standard errors, so that noise is not taken for one.",
  ),
  plateNoisyNewtons: number(
    5,
    "N",
    1,
    50,
    "A plate whose empty level varies by more than this (SD in the flight) places contact events coarsely: it is warned of.",
  ),
  plateOffsetSd: number(20, "N", 1, 100, "An empty stretch restless beyond this SD gives no plate zero."),
  onsetSd: number(5, "1", 1, 10, "Onset band in standard deviations of the weighing window (Owen et al. 2014)."),
  onsetWeightFraction: number(0.01, "1", 0.001, 0.1, "Least onset band as a part of body weight."),
  onsetBackSeconds: number(0.03, "s", 0, 0.1, "Onset is placed this much before the band is left (Owen et al. 2014)."),
  contactSd: number(5, "1", 1, 10, "Contact threshold above the empty level, in its standard deviations."),
  contactMinimumNewtons: number(10, "N", 1, 50, "Least contact threshold above the empty level."),
  contactHoldSeconds: number(
    0.03,
    "s",
    0.005,
    0.1,
    "Force must stay below the threshold this long for a take-off, so that ringing is not one.",
  ),
  contactCarrySeconds: number(
    0.0015,
    "s",
    0,
    0.005,
    "Most a contact event is carried from its threshold crossing to the empty level.",
  ),
  contactCarryRateHz: number(
    500,
    "Hz",
    200,
    5000,
    "Contact events are carried to the empty level only at this sampling rate or above.",
  ),
  contactCarryWeightFraction: number(
    0.05,
    "1",
    0.01,
    0.2,
    "Samples up to this part of weight above the threshold make the line that carries a contact event.",
  ),
  takeoffShapeSeconds: number(
    0.0003,
    "s",
    0,
    0.01,
    "Uncertainty of a take-off because the shape of the last contact is unknown (simulated jumps).",
  ),
  onsetUncertaintySeconds: number(
    0.015,
    "s",
    0,
    0.1,
    "Standard uncertainty of the onset against the first intended movement (simulated jumps); the least certain event.",
  ),
  dipSearchSeconds: number(
    1.5,
    "s",
    0.3,
    5,
    "The unweighting minimum is looked for this long before the most negative velocity.",
  ),
  landingPeakSeconds: number(
    0.3,
    "s",
    0.05,
    1,
    "The landing peak from which the touchdown is searched lies within this time of the flight.",
  ),
  otherFootFraction: number(
    0.15,
    "1",
    0.02,
    0.4,
    "A plate that carries less than this part of the push does not carry a leg of a two-leg jump.",
  ),
  otherFootSeconds: number(
    0.01,
    "s",
    0.001,
    0.5,
    "The other foot must carry load this long to disturb a single-leg trial.",
  ),
  firstPeakProminenceFraction: number(
    0.1,
    "1",
    0.01,
    0.5,
    "Prominence of the first landing peak, as a part of weight (halved for one limb of a two-leg landing).",
  ),
  stabilisationBandFraction: number(
    0.05,
    "1",
    0.01,
    0.2,
    "Force within this part of weight counts as stable after a landing.",
  ),
  stabilisationSeconds: number(1, "s", 0.2, 5, "Force must stay stable this long."),
  stabilisationNeedsSeconds: number(3, "s", 1, 20, "Recording needed after touchdown for a time to stabilisation."),
  stabilisationFilterHz: number(20, "Hz", 5, 100, "Low-pass cut-off for the time to stabilisation."),
  touchdownShapeSeconds: number(
    0.001,
    "s",
    0,
    0.01,
    "Uncertainty of a touchdown because force may start gently (simulated jumps).",
  ),
  filterHz: number(50, "Hz", 5, 200, "Cut-off of the zero-lag Butterworth filter; display only."),
  otherFootNewtons: number(20, "N", 5, 100, "Load on the other plate that disturbs a single-leg trial."),
  oneLegStandingSeconds: number(
    2,
    "s",
    0.5,
    10,
    "Standing on one leg this long, with the limb stated, proves which foot was on which plate.",
  ),
  legSwingWeightFraction: number(
    0.1,
    "1",
    0.02,
    0.5,
    "A second dip this deep, as a part of weight, before the push is a swing of the free leg.",
  ),
  enteredMassUncertaintyKg: number(
    0.5,
    "kg",
    0.05,
    5,
    "Standard uncertainty of an entered body mass: scales, clothing, time of day (common practice).",
  ),
  onsetVelocityUncertainty: number(
    0.02,
    "m/s",
    0,
    0.5,
    "Uncertainty of the velocity taken as zero at onset where nobody stood still before.",
  ),
  flightVelocityUncertainty: number(
    0.05,
    "m/s",
    0,
    0.5,
    "Uncertainty of a take-off velocity taken from half the flight time: a landing posture 2.5 cm lower makes 0.05 m/s.",
  ),
  weightToleranceSession: number(0.01, "1", 0.002, 0.1, "Weights of one session may differ by this part."),
  weightToleranceEnteredKg: number(2, "kg", 0.2, 10, "Measured mass may differ by this much from the entered mass."),
  heightsDifferFraction: number(0.1, "1", 0.02, 0.5, "Impulse and flight-time heights may differ by this part."),
  squatDipFraction: number(
    0.05,
    "1",
    0.01,
    0.3,
    "A dip of force deeper than this part of body weight before the rise is a countermovement in a squat jump.",
  ),
  squatDipMetres: number(
    0.02,
    "m",
    0.005,
    0.1,
    "Sinking further than this before the rise is a countermovement in a squat jump.",
  ),
  dropHeightTolerance: number(
    0.2,
    "1",
    0.05,
    0.5,
    "The effective drop height may differ by this part from the box (10 to 14 % are usual: McMahon et al. 2021).",
  ),
  dropHeightLegsTolerance: number(
    0.1,
    "1",
    0.02,
    0.5,
    "Effective drop heights of the two legs may differ by this part of the larger before single-leg trials stop being comparable.",
  ),
  slowContactSeconds: number(
    0.25,
    "s",
    0.15,
    0.5,
    "A longer two-leg contact is slow stretch-shortening (Schmidtbleicher 1992); slower hops are not among the best.",
  ),
  bestHops: number(5, "1", 1, 20, "This many hops with the largest reactive strength index stand for a bout."),
  spikeNewtons: number(
    100,
    "N",
    20,
    2000,
    "A sample this far from the course of its neighbours stands alone: a disturbance, not a force.",
  ),
  spikeSlopes: number(
    3,
    "1",
    1,
    20,
    "A spike must also exceed this many times the steepest change around it, so that an impact is not one.",
  ),
  landingQuietSeconds: number(
    0.3,
    "s",
    0.05,
    2,
    "Recording wanted after touchdown; a shorter one has no complete landing.",
  ),
  clippedSamples: number(
    5,
    "1",
    3,
    100,
    "This many equal samples at the maximum are a flat top: the range of the amplifier was exceeded.",
  ),
  selfCheckFraction: number(
    1e-6,
    "1",
    1e-12,
    1e-2,
    "Impulses summed directly from force must equal mass times velocity change within this part.",
  ),
  rateWarnHz: number(
    500,
    "Hz",
    100,
    2000,
    "Below this sampling rate events and heights lose accuracy (Owen et al. 2014 ask for 1000 Hz).",
  ),
  rateRefuseHz: number(200, "Hz", 50, 1000, "Below this only weight and mass remain."),
  rateLeastHz: number(10, "Hz", 1, 100, "A slower time base is no force recording: its unit was misread."),
  rateMostHz: number(20000, "Hz", 2000, 1e6, "A faster time base is no force recording: its unit was misread."),
  gapSamples: number(1.5, "1", 1.1, 10, "A time step longer than this many samples is a gap."),
  signLoadFraction: number(
    0.25,
    "1",
    0.05,
    1,
    "A sample shows the sign of a column once it carries this part of the least body weight.",
  ),
  timeUnevenFraction: number(0.01, "1", 0.0001, 0.5, "Time steps may differ from their median by this part."),
  columnsDisagreeFraction: number(
    0.01,
    "1",
    0.001,
    0.1,
    "A total column may differ from left plus right by this part of the largest load.",
  ),
  bodyMassMinimumKg: number(
    25,
    "kg",
    5,
    60,
    "A standing load below this cannot be an athlete in newtons: the unit is in doubt.",
  ),
  bodyMassMaximumKg: number(
    250,
    "kg",
    100,
    500,
    "A standing load above this cannot be an athlete in newtons: the unit is in doubt.",
  ),
  minimumTrialsPerSide: number(3, "1", 1, 20, "Fewer sound trials a side are not compared."),
  maximumTrialsPerSide: number(6, "1", 1, 30, "Most attempts a side; more are never suggested."),
  suggestedTrialsPerSide: number(
    2,
    "1",
    0,
    10,
    "More trials are suggested only where at most this many a side would probably settle a question.",
  ),
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
  gateEffusionGrade: {
    default: "trace",
    choices: ["none", "trace", "1+", "2+", "3+"],
    reason: "Effusion above this grade closes the gate (common practice).",
  } as ChoiceSetting,
  gatePain: number(
    3,
    "1",
    0,
    10,
    "Pain (0 to 10) above this closes the gate; the clinic's own limit (common practice).",
  ),
} as const satisfies Readonly<Record<string, NumberSetting | ChoiceSetting>>;

type Catalogue = typeof settingsCatalogue;

export type SettingName = keyof Catalogue;

/** All settings with their values; one document with one hash. */
export type Settings = {
  readonly [Name in SettingName]: Catalogue[Name] extends NumberSetting ? number : string;
};

/** The values as they ship. */
export const defaultSettings: Settings = Object.fromEntries(
  Object.entries(settingsCatalogue).map(([name, entry]) => [name, entry.default]),
) as Settings;

/**
 * Defaults with some values replaced.
 * @throws RangeError naming the setting, when a value lies outside its catalogue range. Callers check user input first.
 */
export function settingsWith(changes: Partial<Settings>): Settings {
  for (const [name, value] of Object.entries(changes)) {
    const entry: NumberSetting | ChoiceSetting | undefined = settingsCatalogue[name as SettingName];
    if (entry === undefined) throw new RangeError(`There is no setting called "${name}".`);
    const allowed =
      "choices" in entry
        ? typeof value === "string" && entry.choices.includes(value)
        : typeof value === "number" && value >= entry.minimum && value <= entry.maximum;
    if (!allowed) throw new RangeError(`Setting ${name} cannot be ${value}.`);
  }
  return { ...defaultSettings, ...changes };
}

/** SHA-256 of the settings in catalogue order, so that equal settings have equal hashes on every machine. */
export function settingsHash(settings: Settings): string {
  const ordered = Object.fromEntries(
    Object.keys(settingsCatalogue).map((name) => [name, settings[name as SettingName]]),
  );
  return sha256Hex(JSON.stringify(ordered));
}
