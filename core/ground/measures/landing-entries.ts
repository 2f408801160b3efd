import { testsWith } from "../test-traits.ts";
import { ownChoice, type PlainEntry } from "./measure-entry.ts";

const landings = testsWith("landing");

/** Measures of the landing, in the order of screens. */
export const landingEntries = [
  {
    id: "peakLandingForce",
    tests: landings,
    unit: "N",
    group: "landing",
    source: "Hughes et al. 2020",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
    informationOnly: true,
  },
  {
    id: "timeToPeakLandingForce",
    tests: landings,
    unit: "s",
    group: "landing",
    source: ownChoice,
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "landingImpulse",
    tests: landings,
    unit: "N.s",
    group: "landing",
    source: ownChoice,
    perLimb: true,
    forms: ["PerBodyMass"],
    informationOnly: true,
  },
  {
    id: "loadingRate",
    tests: landings,
    unit: "N/s",
    group: "landing",
    source: "mean slope to the first peak, common practice",
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "limbTouchdownDifference",
    tests: landings,
    unit: "s",
    group: "landing",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "timeToStabilisation",
    tests: landings,
    unit: "s",
    group: "landing",
    source: "Fransz et al. 2015",
    informationOnly: true,
  },
] as const satisfies readonly PlainEntry[];
