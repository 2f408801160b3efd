import { testsWith } from "../test-traits.ts";
import { ownChoice, type PlainEntry } from "./measure-entry.ts";

const countermovement = testsWith("dip");
const standingStarts = testsWith("start from standing");
const braked = testsWith("turn");
const oneFlight = testsWith("flight");
const oneContact = testsWith("contact");
const drops = testsWith("drop");
const hops = testsWith("hops");

/** Measures of the whole trial, in the order of screens. */
export const wholeEntries = [
  {
    id: "jumpHeightImpulse",
    tests: oneFlight,
    unit: "m",
    group: "whole",
    source: "Linthorne 2001",
  },
  {
    id: "jumpHeightFlightTime",
    tests: oneFlight,
    unit: "m",
    group: "whole",
    source: "Linthorne 2001",
  },
  {
    id: "jumpHeightFromStanding",
    tests: braked,
    unit: "m",
    group: "whole",
    source: "Moir 2008",
  },
  {
    id: "reactiveStrengthIndex",
    tests: oneContact,
    unit: "m/s",
    group: "whole",
    source: "Young 1995",
  },
  {
    id: "contactTime",
    tests: oneContact,
    unit: "s",
    group: "whole",
    source: "Young 1995",
  },
  {
    id: "reactiveStrengthIndexBestFive",
    tests: hops,
    unit: "m/s",
    group: "whole",
    source: "Harper, Hobbs and Moore 2011",
  },
  {
    id: "hopStiffness",
    tests: hops,
    unit: "N/m",
    group: "whole",
    source: "Dalleau et al. 2004",
  },
  {
    id: "hopsFound",
    tests: hops,
    unit: "{count}",
    group: "whole",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "hopsUsed",
    tests: hops,
    unit: "{count}",
    group: "whole",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "dropHeightEffective",
    tests: drops,
    unit: "m",
    group: "whole",
    source: "McMahon, Lake, Stratford and Comfort 2021",
  },
  {
    id: "dropHeightByFlightTime",
    tests: oneContact,
    unit: "m",
    group: "whole",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "dropHeightDifference",
    tests: oneContact,
    unit: "m",
    group: "whole",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "takeoffVelocity",
    tests: oneFlight,
    unit: "m/s",
    group: "whole",
    source: "Linthorne 2001",
  },
  {
    id: "reactiveStrengthIndexModified",
    tests: standingStarts,
    unit: "m/s",
    group: "whole",
    source: "Ebben and Petushek 2010",
  },
  {
    id: "timeToTakeoff",
    tests: standingStarts,
    unit: "s",
    group: "whole",
    source: "Ebben and Petushek 2010",
  },
  {
    id: "flightTime",
    tests: oneFlight,
    unit: "s",
    group: "whole",
    source: "Linthorne 2001",
  },
  {
    id: "countermovementDepth",
    tests: countermovement,
    unit: "m",
    group: "whole",
    source: ownChoice,
  },
  {
    id: "limbTakeoffDifference",
    tests: oneFlight,
    unit: "s",
    group: "whole",
    source: ownChoice,
    informationOnly: true,
  },
  {
    id: "bodyWeight",
    tests: testsWith("athlete"),
    unit: "N",
    group: "whole",
    source: "Owen et al. 2014",
  },
  {
    id: "bodyMass",
    tests: testsWith("athlete"),
    unit: "kg",
    group: "whole",
    source: ownChoice,
  },
] as const satisfies readonly PlainEntry[];
