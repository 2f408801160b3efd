import type { PushShapeName } from "../../core/simulate/shapes.ts";
import type { SessionDescription } from "../../core/stated/session.ts";
import { demoCautions } from "./demo-cautions.ts";
import type { Dialect } from "./write-delimited.ts";
import { commaDialect } from "./write-delimited.ts";

/** The wanted means of one session's two-leg jumps. Centimetres, seconds, per cent (involved over uninvolved). */
export interface TwoLegTargets {
  readonly heightCm: number;
  readonly seconds: number;
  readonly depthCm: number;
  readonly braking: number;
  readonly propulsion: number;
  readonly landingPeak: number;
}

/** The wanted means of one leg's jumps. The unweighting minimum is in body weights. */
export interface OneLegTargets {
  readonly heightCm: number;
  readonly seconds: number;
  readonly minimum: number;
}

/** The wanted means of drop jumps. Height is that of the flight time; the effective drop is v²/2g at touchdown. */
export interface DropTargets {
  readonly heightCm: number;
  readonly contactSeconds: number;
  /** Absent: 0.27 m of 0.30 m on two legs, 0.17 m of 0.20 m on one. */
  readonly dropHeightEffectiveMetres?: number;
}

/** One session of the invented world. */
export interface DemoSession {
  readonly folder: string;
  readonly shows: string;
  readonly massKg: number;
  readonly twoLegs: TwoLegTargets;
  readonly oneLeg?: { readonly left: OneLegTargets; readonly right: OneLegTargets };
  /** Drop jumps from 0.30 m on two legs and from 0.20 m on each. */
  readonly drops?: { readonly both: DropTargets; readonly left: DropTargets; readonly right: DropTargets };
  /** Single-leg trials were recorded on both plates (they then prove the plates) or on one. */
  readonly singlePlates: "one" | "two";
  readonly dialect: Dialect;
  readonly facedWrongWay?: boolean;
  /** One two-leg trial weighed low because of a hand on a rail. */
  readonly railTrial?: { readonly trial: number; readonly fraction: number };
  readonly platesStated: boolean;
  /** Of the two-leg trials, in turn. */
  readonly pushShapes: readonly PushShapeName[];
  readonly landingShape: "ordinary" | "soft" | "two-peaked";
  /** Even: odd seeds are kept for the final tables. */
  readonly seed: number;
  readonly description: Omit<SessionDescription, "files" | "massKg" | "plates" | "simulated">;
}

const maren = {
  code: "GH-07",
  name: "Maren Tveitlund",
  sex: "female",
  birthYear: 2003,
  sport: "handball, back player",
} as const;
const marenInjury =
  "Right knee: anterior cruciate ligament injured 17 January 2026, reconstructed with a hamstring graft 12 March 2026.";
const jonas = {
  code: "GH-14",
  name: "Jonas Ekre",
  sex: "male",
  birthYear: 2001,
  sport: "handball, line player",
} as const;
const jonasInjury = "Left knee: anterior cruciate ligament reconstructed with a bone–tendon–bone graft.";
/** It makes the right knee no second involved one, and yet the comparison limb carries a caution. */
const jonasOther = [{ side: "right", bodyPart: "knee", what: "partial meniscectomy", date: "2022-09-15" }] as const;
const aila = { code: "GH-21", name: "Aila Rusten", sex: "female", birthYear: 2006, sport: "handball" } as const;

const preInjuryDate = "2025-08-19";

/** Single-leg heights before the injury, in metres. */
const marenReferences = (["right", "left"] as const).map((side) => ({
  test: "countermovementJump" as const,
  legs: "single" as const,
  measure: "jumpHeightImpulse",
  side,
  value: side === "right" ? 0.15 : 0.156,
  unit: "m" as const,
  date: preInjuryDate,
  origin: "pre-injury" as const,
}));

const marenOperation = { date: "2026-03-12", graft: "hamstring", repaired: "no" } as const;
const jonasOperation = { date: "2026-04-14", graft: "bone–tendon–bone", repaired: "no" } as const;

function marenAfter(date: string, milestone: string, asked: Parameters<typeof demoCautions>[1]) {
  return {
    athlete: maren,
    involved: "right",
    injury: marenInjury,
    date,
    milestone,
    operation: marenOperation,
    ...demoCautions(date, asked),
    references: marenReferences,
  } as const;
}

const semicolonDialect: Dialect = { ...commaDialect, delimiter: ";", decimalMark: "," };
const tabDialect: Dialect = { ...commaDialect, delimiter: "\t" };
const spaceDialect: Dialect = { delimiter: " ", decimalMark: ".", time: "s", unit: "N", lineEnd: "\n" };

/** The countermovement jumps of the invented handball club. Everything here is made up. */
export const demoSessions: readonly DemoSession[] = [
  {
    folder: "maren-tveitlund/1-pre-injury",
    shows: "the reference from before the injury; single-leg trials on both plates prove which foot stood where",
    massKg: 69.4,
    // Nobody was injured yet, so the indices are left over right: right over left they are 97, 98 and 96 %.
    twoLegs: {
      heightCm: 31.5,
      seconds: 0.78,
      depthCm: 29,
      braking: 100 / 0.97,
      propulsion: 100 / 0.98,
      landingPeak: 100 / 0.96,
    },
    oneLeg: {
      left: { heightCm: 15.6, seconds: 0.86, minimum: 0.62 },
      right: { heightCm: 15.0, seconds: 0.87, minimum: 0.62 },
    },
    drops: {
      both: { heightCm: 27.0, contactSeconds: 0.204 },
      left: { heightCm: 14.1, contactSeconds: 0.296 },
      right: { heightCm: 13.4, contactSeconds: 0.3 },
    },
    singlePlates: "two",
    dialect: commaDialect,
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "two-peaked",
    seed: 1000,
    description: {
      athlete: maren,
      involved: "none",
      date: preInjuryDate,
      milestone: "pre-injury",
      ...demoCautions(preInjuryDate, { pain: [0, 0] }),
      note: "Pre-season testing. The right knee was injured later.",
    },
  },
  {
    folder: "maren-tveitlund/2-month-4",
    shows: "a stage whose protocol has two-leg jumps only; the right leg is spared most in braking and landing",
    massKg: 67.1,
    twoLegs: { heightCm: 20.5, seconds: 0.92, depthCm: 21, braking: 66, propulsion: 80, landingPeak: 62 },
    singlePlates: "two",
    dialect: semicolonDialect,
    platesStated: true,
    pushShapes: ["even", "late-rise"],
    landingShape: "soft",
    seed: 1100,
    description: {
      ...marenAfter("2026-07-14", "month 4, return to running", { pain: [1, 2], effusion: "trace", askedAgain: false }),
      note: "Single-leg jumps and drop jumps are not in the protocol of this stage.",
    },
  },
  {
    folder: "maren-tveitlund/3-month-5-5",
    shows:
      "a session not to be trusted: she faced the wrong way (right foot on the plate named left), two-leg trial 3 weighs 3.4 % low with a hand on the rail, effusion 1+, stopped for pain 5 of 10; single-leg trials contradict the column names",
    massKg: 68.0,
    twoLegs: { heightCm: 23.8, seconds: 0.88, depthCm: 24, braking: 75, propulsion: 86, landingPeak: 70 },
    oneLeg: {
      left: { heightCm: 13.9, seconds: 0.88, minimum: 0.63 },
      right: { heightCm: 9.6, seconds: 1.0, minimum: 0.7 },
    },
    singlePlates: "two",
    dialect: tabDialect,
    facedWrongWay: true,
    railTrial: { trial: 3, fraction: 0.034 },
    platesStated: false,
    pushShapes: ["even", "late-rise"],
    landingShape: "soft",
    seed: 1200,
    description: {
      ...marenAfter("2026-08-27", "month 5.5", { pain: [2, 5], effusion: "1+" }),
      stopped: {
        kind: "knee",
        reason: "Pain 5 of 10 in the right knee after the last single-leg trial; drop jumps were not begun.",
      },
      note: "Which way she faced was not written down.",
    },
  },
  {
    folder: "maren-tveitlund/4-month-7",
    shows: "both legs below their reference, and a braking index below the propulsion index",
    massKg: 68.6,
    twoLegs: { heightCm: 26.6, seconds: 0.84, depthCm: 26, braking: 84, propulsion: 91, landingPeak: 78 },
    oneLeg: {
      left: { heightCm: 14.0, seconds: 0.88, minimum: 0.63 },
      right: { heightCm: 11.7, seconds: 1.0, minimum: 0.69 },
    },
    drops: {
      both: { heightCm: 21.8, contactSeconds: 0.262 },
      left: { heightCm: 13.2, contactSeconds: 0.318 },
      right: { heightCm: 10.1, contactSeconds: 0.384, dropHeightEffectiveMetres: 0.155 },
    },
    singlePlates: "one",
    dialect: {
      ...commaDialect,
      preamble: ["Simulated recording of the invented Grynnholm HK", "1000 samples a second"],
    },
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "ordinary",
    seed: 1300,
    description: marenAfter("2026-10-13", "month 7, team training without contact", { pain: [0, 1], effusion: "none" }),
  },
  {
    folder: "maren-tveitlund/5-month-9",
    shows: "how symmetry flatters: after a left ankle sprain and two missed weeks the comparison leg is lower too",
    massKg: 69.0,
    twoLegs: { heightCm: 28.3, seconds: 0.82, depthCm: 27, braking: 91, propulsion: 95, landingPeak: 86 },
    oneLeg: {
      left: { heightCm: 13.6, seconds: 0.9, minimum: 0.64 },
      right: { heightCm: 12.9, seconds: 1.02, minimum: 0.67 },
    },
    drops: {
      both: { heightCm: 24.6, contactSeconds: 0.229 },
      left: { heightCm: 12.4, contactSeconds: 0.326 },
      right: { heightCm: 11.6, contactSeconds: 0.345 },
    },
    singlePlates: "two",
    dialect: { ...tabDialect, decimalMark: ",", lineEnd: "\r\n" },
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "ordinary",
    seed: 1400,
    description: {
      ...marenAfter("2026-12-14", "month 9", { pain: [0, 0], effusion: "none" }),
      otherInjuries: [{ side: "left", bodyPart: "ankle", what: "sprain", date: "2026-11-16" }],
    },
  },
  {
    folder: "maren-tveitlund/6-month-11",
    shows: "an honestly open case: several indices lie close to 90 %",
    massKg: 69.3,
    twoLegs: { heightCm: 30.2, seconds: 0.79, depthCm: 28, braking: 95, propulsion: 97, landingPeak: 91 },
    oneLeg: {
      left: { heightCm: 15.2, seconds: 0.87, minimum: 0.62 },
      right: { heightCm: 14.2, seconds: 1.04, minimum: 0.65 },
    },
    drops: {
      both: { heightCm: 26.4, contactSeconds: 0.206 },
      left: { heightCm: 13.8, contactSeconds: 0.302 },
      right: { heightCm: 12.9, contactSeconds: 0.312 },
    },
    singlePlates: "two",
    dialect: spaceDialect,
    platesStated: true,
    pushShapes: ["even", "early-rise"],
    landingShape: "ordinary",
    seed: 1500,
    description: marenAfter("2027-02-11", "month 11, return to competition", { pain: [0, 0], effusion: "none" }),
  },
  {
    folder: "jonas-ekre/1-month-6",
    shows: "the left side as the involved one, and no values from before the injury",
    massKg: 92.4,
    twoLegs: { heightCm: 33.0, seconds: 0.84, depthCm: 30, braking: 76, propulsion: 86, landingPeak: 72 },
    oneLeg: {
      left: { heightCm: 13.5, seconds: 1.04, minimum: 0.68 },
      right: { heightCm: 18.2, seconds: 0.9, minimum: 0.61 },
    },
    drops: {
      both: { heightCm: 27.8, contactSeconds: 0.24 },
      left: { heightCm: 11.4, contactSeconds: 0.372 },
      right: { heightCm: 16.0, contactSeconds: 0.33 },
    },
    singlePlates: "one",
    dialect: semicolonDialect,
    platesStated: true,
    pushShapes: ["even", "late-rise"],
    landingShape: "ordinary",
    seed: 2000,
    description: {
      athlete: jonas,
      involved: "left",
      injury: jonasInjury,
      otherInjuries: jonasOther,
      date: "2026-10-20",
      milestone: "month 6",
      operation: jonasOperation,
      ...demoCautions("2026-10-20", { pain: [0, 1], effusion: "none" }),
    },
  },
  {
    folder: "jonas-ekre/2-month-9",
    shows: "the same athlete three months later; force written in kilonewtons",
    massKg: 91.2,
    twoLegs: { heightCm: 38.0, seconds: 0.82, depthCm: 33, braking: 86, propulsion: 92, landingPeak: 83 },
    oneLeg: {
      left: { heightCm: 16.8, seconds: 1.12, minimum: 0.66 },
      right: { heightCm: 18.9, seconds: 0.89, minimum: 0.61 },
    },
    drops: {
      both: { heightCm: 31.4, contactSeconds: 0.222 },
      left: { heightCm: 14.5, contactSeconds: 0.34 },
      right: { heightCm: 16.8, contactSeconds: 0.318 },
    },
    singlePlates: "one",
    dialect: { ...commaDialect, unit: "kN" },
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "two-peaked",
    seed: 2100,
    description: {
      athlete: jonas,
      involved: "left",
      injury: jonasInjury,
      otherInjuries: jonasOther,
      date: "2027-01-20",
      milestone: "month 9",
      operation: jonasOperation,
      ...demoCautions("2027-01-20", { pain: [0, 0], effusion: "none" }),
    },
  },
  {
    folder: "aila-rusten/1-first-session",
    shows: "left and right instead of involved and uninvolved (never injured); first of a reliability pair",
    massKg: 66.5,
    // Nobody is injured, so these indices are left over right.
    twoLegs: { heightCm: 32.4, seconds: 0.76, depthCm: 28, braking: 97, propulsion: 100, landingPeak: 98 },
    oneLeg: {
      left: { heightCm: 15.9, seconds: 0.86, minimum: 0.61 },
      right: { heightCm: 14.9, seconds: 0.87, minimum: 0.62 },
    },
    drops: {
      both: { heightCm: 29.0, contactSeconds: 0.206 },
      left: { heightCm: 15.1, contactSeconds: 0.296 },
      right: { heightCm: 14.2, contactSeconds: 0.296 },
    },
    singlePlates: "two",
    dialect: { ...tabDialect, time: "ms" },
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "ordinary",
    seed: 3000,
    description: {
      athlete: aila,
      involved: "none",
      date: "2026-11-09",
      milestone: "first session",
      ...demoCautions("2026-11-09", { pain: [0, 0] }),
    },
  },
  {
    folder: "aila-rusten/2-second-session",
    shows: "how, seven days later, the direction of the braking index turns by noise alone",
    massKg: 66.5,
    twoLegs: { heightCm: 32.0, seconds: 0.77, depthCm: 28, braking: 102, propulsion: 100, landingPeak: 97 },
    oneLeg: {
      left: { heightCm: 15.5, seconds: 0.86, minimum: 0.61 },
      right: { heightCm: 14.6, seconds: 0.87, minimum: 0.62 },
    },
    drops: {
      both: { heightCm: 28.4, contactSeconds: 0.209 },
      left: { heightCm: 14.9, contactSeconds: 0.298 },
      right: { heightCm: 14.0, contactSeconds: 0.298 },
    },
    singlePlates: "one",
    dialect: { delimiter: ",", decimalMark: ".", header: "units", unit: "N", lineEnd: "\n" },
    platesStated: true,
    pushShapes: ["even", "two-peaked"],
    landingShape: "ordinary",
    seed: 3100,
    description: {
      athlete: aila,
      involved: "none",
      date: "2026-11-16",
      milestone: "second session, seven days later",
      ...demoCautions("2026-11-16", { pain: [0, 0] }),
    },
  },
];
