import { testsWith } from "../test-traits.ts";
import { ownChoice, type PlainEntry } from "./measure-entry.ts";

const landings = testsWith("landing");

/** Measures of the landing, in the order of screens. */
export const landingEntries: readonly PlainEntry[] = [
  {
    id: "peakLandingForce",
    tests: landings,
    label: "Force, peak",
    unit: "N",
    group: "landing",
    definition: "Largest vertical force from touchdown to the landing end, unfiltered.",
    source: "Hughes et al. 2020",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
    informationOnly: true,
  },
  {
    id: "timeToPeakLandingForce",
    tests: landings,
    label: "Time to peak force",
    unit: "s",
    group: "landing",
    definition: "From touchdown to the peak landing force; per limb from that limb's own touchdown.",
    source: ownChoice,
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "landingImpulse",
    tests: landings,
    label: "Impulse, gross",
    unit: "N.s",
    group: "landing",
    definition: "Vertical force integrated from touchdown to the landing end.",
    source: ownChoice,
    perLimb: true,
    forms: ["PerBodyMass"],
    informationOnly: true,
  },
  {
    id: "loadingRate",
    tests: landings,
    label: "Loading rate",
    unit: "N/s",
    group: "landing",
    definition: "Mean slope of force from touchdown to the first local maximum of at least body weight.",
    source: "mean slope to the first peak, common practice",
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "limbTouchdownDifference",
    tests: landings,
    label: "Touchdown difference, right minus left",
    unit: "s",
    group: "landing",
    definition: "Touchdown of the right limb minus touchdown of the left, each on its own plate.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "timeToStabilisation",
    tests: landings,
    label: "Time to stabilisation",
    unit: "s",
    group: "landing",
    definition:
      "From touchdown to the first second within 5 % of body weight, force low-passed at 20 Hz; depends on the recording's length.",
    source: "Fransz et al. 2015",
    informationOnly: true,
  },
];
