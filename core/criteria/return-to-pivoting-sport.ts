import type { CriteriaSet } from "./criterion.ts";

/** The shipped criteria for returning to a pivoting sport that a countermovement jump can answer; editable as a copy. */
export const returnToPivotingSport: CriteriaSet = {
  id: "return-to-pivoting-sport",
  name: "Return to pivoting sport",
  version: 1,
  author: "Counterpoise contributors",
  stage: "Return to pivoting sport",
  population: "Athletes of pivoting sports after knee injury; sex, age and level not narrowed down",
  criteria: [
    {
      id: "single-leg-countermovement-jump-height-symmetry",
      label: "Jump height symmetry, single-leg countermovement jump",
      source: "common practice",
      test: "countermovementJump",
      kind: "symmetry",
      legs: "single",
      measure: "jumpHeightImpulse",
      atLeastPercent: 90,
    },
    {
      id: "countermovement-jump-braking-impulse-symmetry",
      label: "Braking (eccentric) impulse symmetry, countermovement jump on two plates",
      source: "common practice",
      test: "countermovementJump",
      kind: "symmetry",
      legs: "both",
      measure: "brakingImpulse",
      atLeastPercent: 90,
    },
    {
      id: "countermovement-jump-propulsion-impulse-symmetry",
      label: "Propulsion (concentric) impulse symmetry, countermovement jump on two plates",
      source: "common practice",
      test: "countermovementJump",
      kind: "symmetry",
      legs: "both",
      measure: "propulsionImpulse",
      atLeastPercent: 90,
    },
    {
      id: "single-leg-countermovement-jump-height-against-reference",
      label:
        "Jump height of the involved leg against the uninvolved leg's pre-injury or pre-operative value, single-leg countermovement jump",
      source:
        "after Wellsandt, Failla and Snyder-Mackler 2017, J Orthop Sports Phys Ther 47(5):334–338 (small numbers: 70 athletes, 11 second injuries)",
      test: "countermovementJump",
      kind: "against-reference",
      legs: "single",
      measure: "jumpHeightImpulse",
      atLeastPercent: 90,
    },
  ],
};
