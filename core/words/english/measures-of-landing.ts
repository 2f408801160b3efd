import type { MeasureWords } from "../measure-words.ts";

/** What the measures of the landing are called and how they are defined, in the order of screens. */
export const wordsOfLanding = {
  peakLandingForce: {
    label: "Force, peak",
    definition: "Largest vertical force from touchdown to the landing end, unfiltered.",
  },
  timeToPeakLandingForce: {
    label: "Time to peak force",
    definition: "From touchdown to the peak landing force; per limb from that limb's own touchdown.",
  },
  landingImpulse: {
    label: "Impulse, gross",
    definition: "Vertical force integrated from touchdown to the landing end.",
  },
  loadingRate: {
    label: "Loading rate",
    definition: "Mean slope of force from touchdown to the first local maximum of at least body weight.",
  },
  limbTouchdownDifference: {
    label: "Touchdown difference, right minus left",
    definition: "Touchdown of the right limb minus touchdown of the left, each on its own plate.",
  },
  timeToStabilisation: {
    label: "Time to stabilisation",
    definition:
      "From touchdown to the first second within 5 % of body weight, force low-passed at 20 Hz; depends on the recording's length.",
  },
} satisfies Readonly<Record<string, MeasureWords>>;
