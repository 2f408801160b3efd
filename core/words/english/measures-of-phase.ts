import type { MeasureWords } from "../measure-words.ts";

/** What the measures of the phases of a jump are called and how they are defined, in the order of screens. */
export const wordsOfPhase = {
  unweightingTime: {
    label: "Duration",
    definition: "From onset to the end of unweighting.",
  },
  unweightingNetImpulse: {
    label: "Impulse, net",
    definition: "Force above body weight, integrated over unweighting; negative.",
  },
  brakingTime: {
    label: "Duration",
    definition: "From the end of unweighting, or the touchdown of a drop jump, to the lowest position.",
  },
  brakingImpulse: {
    label: "Impulse, gross",
    definition: "Vertical force integrated over braking.",
  },
  brakingNetImpulse: {
    label: "Impulse, net",
    definition: "Force above body weight, integrated over braking.",
  },
  brakingLimbNetImpulse: {
    label: "Impulse of the limb, net of half body weight",
    definition: "Force of one limb above half body weight, integrated over braking.",
  },
  peakBrakingForce: {
    label: "Force, peak",
    definition: "Largest vertical force in braking.",
  },
  meanBrakingForce: {
    label: "Force, mean",
    definition: "Gross impulse of braking over its duration.",
  },
  forceAtLowestPosition: {
    label: "Force at the lowest position",
    definition: "Vertical force at the lowest position of the centre of mass.",
  },
  peakBrakingPower: {
    label: "Power, peak",
    definition: "Most negative product of force and velocity in braking.",
  },
  brakingRateOfForceDevelopment: {
    label: "Rate of force development",
    definition: "Rise of force from the end of unweighting to the lowest position over its duration.",
  },
  verticalStiffnessBraking: {
    label: "Vertical stiffness",
    definition:
      "Force above body weight at the lowest position over the descent during braking; not the stiffness of a spring.",
  },
  propulsionTime: {
    label: "Duration",
    definition: "From the lowest position, or the onset of a squat jump, to take-off.",
  },
  propulsionImpulse: {
    label: "Impulse, gross",
    definition: "Vertical force integrated over propulsion.",
  },
  propulsionNetImpulse: {
    label: "Impulse, net",
    definition: "Force above body weight, integrated over propulsion.",
  },
  propulsionLimbNetImpulse: {
    label: "Impulse of the limb, net of half body weight",
    definition: "Force of one limb above half body weight, integrated over propulsion.",
  },
  peakPropulsionForce: {
    label: "Force, peak",
    definition: "Largest vertical force in propulsion.",
  },
  meanPropulsionForce: {
    label: "Force, mean",
    definition: "Gross impulse of propulsion over its duration.",
  },
  peakPropulsionPower: {
    label: "Power, peak",
    definition: "Largest product of force and velocity in propulsion.",
  },
  meanPropulsionPower: {
    label: "Power, mean",
    definition: "Product of force and velocity, averaged over propulsion.",
  },
} satisfies Readonly<Record<string, MeasureWords>>;
