import { type TestKind, testKinds } from "../test-kind.ts";
import type { UcumUnit } from "../units.ts";

/** The part of the jump a measure is shown under; also the order on screens. */
export const measureGroups = ["whole", "unweighting", "braking", "propulsion", "landing"] as const;

export type MeasureGroup = (typeof measureGroups)[number];

/** What a body-size form divides by. */
export type BodySizeForm = "PerBodyMass" | "PerBodyWeight";

/** One measure as the program knows it. */
export interface MeasureEntry {
  /** Public identifier (METHODS §5). */
  readonly id: string;
  /** Quantity first, in full words, without the phase when the group says it. */
  readonly label: string;
  readonly unit: UcumUnit;
  readonly group: MeasureGroup;
  /** The definition in one plain sentence. */
  readonly definition: string;
  /** Where the definition comes from. */
  readonly source: string;
  /** True when left and right are reported too, on two plates in two-leg tests. */
  readonly perLimb: boolean;
  /** Body-size forms that are reported beside it. */
  readonly forms: readonly BodySizeForm[];
  /** True for measures that inform only and never enter a criterion. */
  readonly informationOnly: boolean;
  /** The tests that have this measure. */
  readonly tests: readonly TestKind[];
  /** The identifier of the measure a body-size form was made from; absent for plain measures. */
  readonly formOf?: string;
}

interface PlainEntry extends Omit<MeasureEntry, "perLimb" | "forms" | "informationOnly" | "formOf"> {
  readonly perLimb?: boolean;
  readonly forms?: readonly BodySizeForm[];
  readonly informationOnly?: boolean;
}

const ownChoice = "choice of this program, METHODS";

const countermovement: readonly TestKind[] = ["countermovementJump"];
const standingStarts: readonly TestKind[] = ["countermovementJump", "squatJump"];
const braked: readonly TestKind[] = ["countermovementJump", "dropJump"];
const oneFlight: readonly TestKind[] = ["countermovementJump", "squatJump", "dropJump"];
const dropJump: readonly TestKind[] = ["dropJump"];
const drops: readonly TestKind[] = ["dropJump", "dropLanding"];
const landings: readonly TestKind[] = ["countermovementJump", "squatJump", "dropJump", "dropLanding"];
const hops: readonly TestKind[] = ["repeatedHops"];

const plain: readonly PlainEntry[] = [
  {
    id: "jumpHeightImpulse",
    tests: oneFlight,
    label: "Jump height, by impulse",
    unit: "m",
    group: "whole",
    definition: "Rise of the centre of mass after take-off: take-off velocity squared over twice gravity.",
    source: "Linthorne 2001",
  },
  {
    id: "jumpHeightFlightTime",
    tests: oneFlight,
    label: "Jump height, by flight time",
    unit: "m",
    group: "whole",
    definition: "Gravity times flight time squared over eight; includes the landing posture.",
    source: "Linthorne 2001",
  },
  {
    id: "jumpHeightFromStanding",
    tests: braked,
    label: "Jump height, from standing",
    unit: "m",
    group: "whole",
    definition: "Jump height by impulse plus the position of the centre of mass at take-off, counted from standing.",
    source: "Moir 2008",
  },
  {
    id: "reactiveStrengthIndex",
    tests: dropJump,
    label: "Reactive strength index",
    unit: "m/s",
    group: "whole",
    definition: "Jump height by flight time over contact time, metres over seconds.",
    source: "Young 1995",
  },
  {
    id: "contactTime",
    tests: dropJump,
    label: "Contact time",
    unit: "s",
    group: "whole",
    definition: "From the touchdown of the contact to take-off.",
    source: "Young 1995",
  },
  {
    id: "reactiveStrengthIndexBestFive",
    tests: hops,
    label: "Reactive strength index, best five hops",
    unit: "m/s",
    group: "whole",
    definition:
      "Mean of jump height by flight time over contact time of the five best hops; on two legs of those with a quick contact.",
    source: "Harper, Hobbs and Moore 2011",
  },
  {
    id: "hopStiffness",
    tests: hops,
    label: "Stiffness in hopping",
    unit: "N/m",
    group: "whole",
    definition:
      "Vertical stiffness of a half-sine force from contact time and the flight time that follows, mean of the hops used.",
    source: "Dalleau et al. 2004",
  },
  {
    id: "hopsFound",
    tests: hops,
    label: "Hops found",
    unit: "1",
    group: "whole",
    definition: "Contacts followed by a flight and another contact; the entry jump and the last contact are none.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "hopsUsed",
    tests: hops,
    label: "Hops used",
    unit: "1",
    group: "whole",
    definition: "Hops that the means of the bout are made from.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "dropHeightEffective",
    tests: drops,
    label: "Drop height, effective",
    unit: "m",
    group: "whole",
    definition: "Velocity at the first touchdown squared over twice gravity: the height really fallen.",
    source: "McMahon, Lake, Stratford and Comfort 2021",
  },
  {
    id: "dropHeightByFlightTime",
    tests: dropJump,
    label: "Drop height, by flight time",
    unit: "m",
    group: "whole",
    definition:
      "Effective drop height with the velocity at touchdown from half the flight time and the net impulse of the contact.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "dropHeightDifference",
    tests: dropJump,
    label: "Drop height, difference of the two",
    unit: "m",
    group: "whole",
    definition: "Effective drop height from the final quiet standing minus the one by flight time.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "takeoffVelocity",
    tests: oneFlight,
    label: "Velocity at take-off",
    unit: "m/s",
    group: "whole",
    definition: "Upward velocity of the centre of mass at take-off, integrated from the net force.",
    source: "Linthorne 2001",
  },
  {
    id: "reactiveStrengthIndexModified",
    tests: standingStarts,
    label: "Reactive strength index, modified",
    unit: "m/s",
    group: "whole",
    definition: "Jump height by impulse over time to take-off.",
    source: "Ebben and Petushek 2010",
  },
  {
    id: "timeToTakeoff",
    tests: standingStarts,
    label: "Time to take-off",
    unit: "s",
    group: "whole",
    definition: "From onset to take-off.",
    source: "Ebben and Petushek 2010",
  },
  {
    id: "flightTime",
    tests: oneFlight,
    label: "Flight time",
    unit: "s",
    group: "whole",
    definition: "From take-off to touchdown.",
    source: "Linthorne 2001",
  },
  {
    id: "countermovementDepth",
    tests: countermovement,
    label: "Depth of the countermovement",
    unit: "m",
    group: "whole",
    definition: "Distance the centre of mass sinks from onset to the lowest position.",
    source: ownChoice,
  },
  {
    id: "limbTakeoffDifference",
    tests: oneFlight,
    label: "Take-off difference, right minus left",
    unit: "s",
    group: "whole",
    definition: "Take-off of the right limb minus take-off of the left, each on its own plate.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "bodyWeight",
    tests: testKinds,
    label: "Body weight",
    unit: "N",
    group: "whole",
    definition:
      "Mean vertical force over the steadiest second of quiet standing: before the jump, or after the landing where the athlete drops onto the plate.",
    source: "Owen et al. 2014",
  },
  {
    id: "bodyMass",
    tests: testKinds,
    label: "Body mass",
    unit: "kg",
    group: "whole",
    definition: "Body weight over gravity.",
    source: ownChoice,
  },

  {
    id: "unweightingTime",
    tests: countermovement,
    label: "Duration",
    unit: "s",
    group: "unweighting",
    definition: "From onset to the end of unweighting.",
    source: "McMahon et al. 2018",
  },
  {
    id: "unweightingNetImpulse",
    tests: countermovement,
    label: "Impulse, net",
    unit: "N.s",
    group: "unweighting",
    definition: "Force above body weight, integrated over unweighting; negative.",
    source: "McMahon et al. 2018",
    forms: ["PerBodyMass"],
  },

  {
    id: "brakingTime",
    tests: braked,
    label: "Duration",
    unit: "s",
    group: "braking",
    definition: "From the end of unweighting, or the touchdown of a drop jump, to the lowest position.",
    source: "McMahon et al. 2018",
  },
  {
    id: "brakingImpulse",
    tests: braked,
    label: "Impulse, gross",
    unit: "N.s",
    group: "braking",
    definition: "Vertical force integrated over braking.",
    source: "Jordan, Aagaard and Herzog 2015",
    perLimb: true,
    forms: ["PerBodyMass"],
  },
  {
    id: "brakingNetImpulse",
    tests: braked,
    label: "Impulse, net",
    unit: "N.s",
    group: "braking",
    definition: "Force above body weight, integrated over braking.",
    source: "McMahon et al. 2018",
    forms: ["PerBodyMass"],
  },
  {
    id: "brakingLimbNetImpulse",
    tests: braked,
    label: "Impulse of the limb, net of half body weight",
    unit: "N.s",
    group: "braking",
    definition: "Force of one limb above half body weight, integrated over braking.",
    source: ownChoice,
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "peakBrakingForce",
    tests: braked,
    label: "Force, peak",
    unit: "N",
    group: "braking",
    definition: "Largest vertical force in braking.",
    source: "McMahon et al. 2018",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
  },
  {
    id: "meanBrakingForce",
    tests: braked,
    label: "Force, mean",
    unit: "N",
    group: "braking",
    definition: "Gross impulse of braking over its duration.",
    source: "McMahon et al. 2018",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
  },
  {
    id: "forceAtLowestPosition",
    tests: braked,
    label: "Force at the lowest position",
    unit: "N",
    group: "braking",
    definition: "Vertical force at the lowest position of the centre of mass.",
    source: "McMahon et al. 2018",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
  },
  {
    id: "peakBrakingPower",
    tests: braked,
    label: "Power, peak",
    unit: "W",
    group: "braking",
    definition: "Most negative product of force and velocity in braking.",
    source: "McMahon et al. 2018",
    forms: ["PerBodyMass"],
  },
  {
    id: "brakingRateOfForceDevelopment",
    tests: countermovement,
    label: "Rate of force development",
    unit: "N/s",
    group: "braking",
    definition: "Rise of force from the end of unweighting to the lowest position over its duration.",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "verticalStiffnessBraking",
    tests: countermovement,
    label: "Vertical stiffness",
    unit: "N/m",
    group: "braking",
    definition:
      "Force above body weight at the lowest position over the descent during braking; not the stiffness of a spring.",
    source: ownChoice,
    informationOnly: true,
  },

  {
    id: "propulsionTime",
    tests: oneFlight,
    label: "Duration",
    unit: "s",
    group: "propulsion",
    definition: "From the lowest position, or the onset of a squat jump, to take-off.",
    source: "McMahon et al. 2018",
  },
  {
    id: "propulsionImpulse",
    tests: oneFlight,
    label: "Impulse, gross",
    unit: "N.s",
    group: "propulsion",
    definition: "Vertical force integrated over propulsion.",
    source: "Jordan, Aagaard and Herzog 2015",
    perLimb: true,
    forms: ["PerBodyMass"],
  },
  {
    id: "propulsionNetImpulse",
    tests: oneFlight,
    label: "Impulse, net",
    unit: "N.s",
    group: "propulsion",
    definition: "Force above body weight, integrated over propulsion.",
    source: "McMahon et al. 2018",
    forms: ["PerBodyMass"],
  },
  {
    id: "propulsionLimbNetImpulse",
    tests: oneFlight,
    label: "Impulse of the limb, net of half body weight",
    unit: "N.s",
    group: "propulsion",
    definition: "Force of one limb above half body weight, integrated over propulsion.",
    source: ownChoice,
    perLimb: true,
    informationOnly: true,
  },
  {
    id: "peakPropulsionForce",
    tests: oneFlight,
    label: "Force, peak",
    unit: "N",
    group: "propulsion",
    definition: "Largest vertical force in propulsion.",
    source: "McMahon et al. 2018",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
  },
  {
    id: "meanPropulsionForce",
    tests: oneFlight,
    label: "Force, mean",
    unit: "N",
    group: "propulsion",
    definition: "Gross impulse of propulsion over its duration.",
    source: "McMahon et al. 2018",
    perLimb: true,
    forms: ["PerBodyMass", "PerBodyWeight"],
  },
  {
    id: "peakPropulsionPower",
    tests: oneFlight,
    label: "Power, peak",
    unit: "W",
    group: "propulsion",
    definition: "Largest product of force and velocity in propulsion.",
    source: "Owen et al. 2014",
    forms: ["PerBodyMass"],
  },
  {
    id: "meanPropulsionPower",
    tests: oneFlight,
    label: "Power, mean",
    unit: "W",
    group: "propulsion",
    definition: "Product of force and velocity, averaged over propulsion.",
    source: "McMahon et al. 2018",
    forms: ["PerBodyMass"],
  },

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

const perMassUnits: Partial<Record<UcumUnit, UcumUnit>> = { N: "N/kg", W: "W/kg", "N.s": "N.s/kg" };

function bodySizeEntry(entry: PlainEntry, form: BodySizeForm): MeasureEntry {
  const perMass = form === "PerBodyMass";
  const unit = perMass ? perMassUnits[entry.unit] : "1";
  if (unit === undefined) throw new RangeError(`${entry.id} has no form per body mass.`);
  return {
    ...entry,
    id: `${entry.id}${form}`,
    label: `${entry.label}, per ${perMass ? "body mass" : "body weight"}`,
    unit,
    definition: `${entry.definition} Divided by ${perMass ? "body mass" : "body weight"}.`,
    perLimb: entry.perLimb ?? false,
    forms: [],
    informationOnly: entry.informationOnly ?? false,
    formOf: entry.id,
  };
}

/** Every measure in the order of screens, a body-size form right behind the measure it was made from. */
export const measureCatalogue: readonly MeasureEntry[] = plain.flatMap((entry) => [
  {
    ...entry,
    perLimb: entry.perLimb ?? false,
    forms: entry.forms ?? [],
    informationOnly: entry.informationOnly ?? false,
  },
  ...(entry.forms ?? []).map((form) => bodySizeEntry(entry, form)),
]);

const byId: ReadonlyMap<string, MeasureEntry> = new Map(measureCatalogue.map((entry) => [entry.id, entry]));

/**
 * The catalogue entry of a measure.
 * @throws RangeError for an identifier that is in no catalogue: that is a mistake of ours.
 */
export function measureEntry(id: string): MeasureEntry {
  const entry = byId.get(id);
  if (entry === undefined) throw new RangeError(`There is no measure called "${id}".`);
  return entry;
}

const groupLabels: Readonly<Record<MeasureGroup, string>> = {
  whole: "Whole jump",
  unweighting: "Unweighting",
  braking: "Braking (eccentric)",
  propulsion: "Propulsion (concentric)",
  landing: "Landing",
};

/** Heading of a group of measures. */
export function groupLabel(group: MeasureGroup): string {
  return groupLabels[group];
}

/** Labels that say where they belong without their heading. */
const complete = new Set(["forceAtLowestPosition", "limbTouchdownDifference"]);

/** The label with its phase, for places where no heading says it: "Impulse in braking, gross", "Duration of braking". */
export function fullLabel(id: string): string {
  const entry = measureEntry(id);
  if (entry.group === "whole" || complete.has(entry.formOf ?? id)) return entry.label;
  const [head, ...rest] = entry.label.split(",");
  const phased = head === "Duration" ? `${head} of ${entry.group}` : `${head} in ${entry.group}`;
  return [phased, ...rest].join(",");
}
