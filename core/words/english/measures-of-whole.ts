import type { MeasureWords } from "../measure-words.ts";

/** What the measures of the whole trial are called and how they are defined, in the order of screens. */
export const wordsOfWhole = {
  jumpHeightImpulse: {
    label: "Jump height, by impulse",
    definition: "Rise of the centre of mass after take-off: take-off velocity squared over twice gravity.",
  },
  jumpHeightFlightTime: {
    label: "Jump height, by flight time",
    definition: "Gravity times flight time squared over eight; includes the landing posture.",
  },
  jumpHeightFromStanding: {
    label: "Jump height, from standing",
    definition: "Jump height by impulse plus the position of the centre of mass at take-off, counted from standing.",
  },
  reactiveStrengthIndex: {
    label: "Reactive strength index",
    definition: "Jump height by flight time over contact time, metres over seconds.",
  },
  contactTime: {
    label: "Contact time",
    definition: "From the touchdown of the contact to take-off.",
  },
  reactiveStrengthIndexBestFive: {
    label: "Reactive strength index, best five hops",
    definition:
      "Mean of jump height by flight time over contact time of the five best hops; on two legs of those with a quick contact.",
  },
  hopStiffness: {
    label: "Stiffness in hopping",
    definition:
      "Vertical stiffness of a half-sine force from contact time and the flight time that follows, mean of the hops used.",
  },
  hopsFound: {
    label: "Hops found",
    definition: "Contacts followed by a flight and another contact; the entry jump and the last contact are none.",
  },
  hopsUsed: {
    label: "Hops used",
    definition: "Hops that the means of the bout are made from.",
  },
  dropHeightEffective: {
    label: "Drop height, effective",
    definition: "Velocity at the first touchdown squared over twice gravity: the height really fallen.",
  },
  dropHeightByFlightTime: {
    label: "Drop height, by flight time",
    definition:
      "Effective drop height with the velocity at touchdown from half the flight time and the net impulse of the contact.",
  },
  dropHeightDifference: {
    label: "Drop height, difference of the two",
    definition: "Effective drop height from the final quiet standing minus the one by flight time.",
  },
  takeoffVelocity: {
    label: "Velocity at take-off",
    definition: "Upward velocity of the centre of mass at take-off, integrated from the net force.",
  },
  reactiveStrengthIndexModified: {
    label: "Reactive strength index, modified",
    definition: "Jump height by impulse over time to take-off.",
  },
  timeToTakeoff: {
    label: "Time to take-off",
    definition: "From onset to take-off.",
  },
  flightTime: {
    label: "Flight time",
    definition: "From take-off to touchdown.",
  },
  countermovementDepth: {
    label: "Depth of the countermovement",
    definition: "Distance the centre of mass sinks from onset to the lowest position.",
  },
  limbTakeoffDifference: {
    label: "Take-off difference, right minus left",
    definition: "Take-off of the right limb minus take-off of the left, each on its own plate.",
  },
  bodyWeight: {
    label: "Body weight",
    definition:
      "Mean vertical force over the steadiest second of quiet standing: before the jump, or after the landing where the athlete drops onto the plate.",
  },
  bodyMass: {
    label: "Body mass",
    definition: "Body weight over gravity.",
  },
} satisfies Readonly<Record<string, MeasureWords>>;
