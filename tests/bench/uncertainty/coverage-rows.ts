import type { MeasureSide } from "../../../core/ground/limb.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { quantile } from "../../core/simulated/simulated-trial.ts";
import type { DroppedJump, StandingJump } from "./simulated-jumps.ts";

/** One value beside what it really was, and its standard uncertainty. */
interface Reading {
  readonly error: number;
  readonly uncertainty: number;
  readonly relativeTo: number;
}

/** A measure over a population: how often its 95 % interval holds the truth, and how far off it is. */
export interface CoverageRow {
  readonly name: string;
  readonly unit: string;
  readonly trials: number;
  readonly coverage: number;
  readonly medianError: number;
  readonly errorP95: number;
  readonly medianUncertainty: number;
  /** Standard deviation and mean of error over its own uncertainty: 1 and 0 where it is calibrated. */
  readonly spread: number;
  readonly shift: number;
}

/** Half width of a 95 % interval in standard uncertainties: the program states k = 1 throughout and uses no t. */
const intervalFactor = 1.96;

/** Rows of the countermovement jumps. */
export function standingRows(jumps: readonly StandingJump[]): CoverageRow[] {
  const row = (name: string, unit: Unit, read: (jump: StandingJump) => readonly (Reading | undefined)[]) =>
    summarise(name, unit, jumps.flatMap(read));
  const both = (id: string, truth: (jump: StandingJump) => number) => (jump: StandingJump) => [
    readingOf(jump.bothEnds, id, jump.limb, truth(jump)),
  ];
  const one = (id: string, truth: (jump: StandingJump) => number) => (jump: StandingJump) => [
    readingOf(jump.oneEnd, id, jump.limb, truth(jump)),
  ];
  const weight = ({ truth }: StandingJump) => truth.bodyWeightNewtons;
  const velocity = ({ truth }: StandingJump) => truth.takeoffVelocity;
  const height = ({ truth }: StandingJump) => truth.jumpHeightMetres;
  const depth = ({ truth }: StandingJump) => truth.depthMetres;
  const flight = ({ truth }: StandingJump) => (truth.gravity * truth.flightSeconds ** 2) / 8;
  return [
    row("body weight, one window", "%", one("bodyWeight", weight)),
    row("body weight, two ends", "%", both("bodyWeight", weight)),
    row("take-off velocity, one end", "mm/s", one("takeoffVelocity", velocity)),
    row("take-off velocity, two ends", "mm/s", both("takeoffVelocity", velocity)),
    row("impulse height, one end", "mm", one("jumpHeightImpulse", height)),
    row("impulse height, two ends", "mm", both("jumpHeightImpulse", height)),
    row("countermovement depth, one end", "mm", one("countermovementDepth", depth)),
    row("countermovement depth, two ends", "mm", both("countermovementDepth", depth)),
    row("flight-time height", "mm", both("jumpHeightFlightTime", flight)),
    row(
      "flight time",
      "ms",
      both("flightTime", ({ truth }) => truth.flightSeconds),
    ),
    row("take-off", "ms", ({ bothEnds, truth }) => [eventReading(bothEnds, "takeoff", truth.events.takeoff)]),
    row("touchdown", "ms", ({ bothEnds, truth }) => [eventReading(bothEnds, "touchdown", truth.events.touchdown)]),
    row("onset", "ms", ({ bothEnds, truth }) => [eventReading(bothEnds, "onset", truth.events.firstMovement)]),
    ...phaseRows(jumps, ({ bothEnds }) => bothEnds),
  ];
}

/** Rows of the drop jumps. */
export function droppedRows(jumps: readonly DroppedJump[]): CoverageRow[] {
  const row = (name: string, unit: Unit, id: string, truth: (jump: DroppedJump) => number) =>
    summarise(
      name,
      unit,
      jumps.map((jump) => readingOf(jump.trial, id, jump.limb, truth(jump))),
    );
  return [
    row("body weight, after the landing", "%", "bodyWeight", ({ truth }) => truth.bodyWeightNewtons),
    row("take-off velocity", "mm/s", "takeoffVelocity", ({ truth }) => truth.takeoffVelocity),
    row("impulse height", "mm", "jumpHeightImpulse", ({ truth }) => truth.jumpHeightMetres),
    row("effective drop height", "mm", "dropHeightEffective", ({ truth }) => truth.dropHeightEffectiveMetres),
    row("flight-time height", "mm", "jumpHeightFlightTime", ({ truth }) => truth.jumpHeightFlightTimeMetres),
    row("flight time", "ms", "flightTime", ({ truth }) => truth.flightSeconds),
    row("contact time", "ms", "contactTime", ({ truth }) => truth.contactSeconds),
    row("reactive strength index", "%", "reactiveStrengthIndex", ({ truth }) => truth.reactiveStrengthIndex),
    ...phaseRows(jumps, ({ trial }) => trial),
  ];
}

function phaseRows<Jump extends StandingJump | DroppedJump>(
  jumps: readonly Jump[],
  trialOf: (jump: Jump) => TrialResult,
): CoverageRow[] {
  return (["braking", "propulsion"] as const).flatMap((phase) =>
    (["both", "left", "right"] as const).map((side) =>
      summarise(
        `${phase} impulse, ${side === "both" ? "whole body" : side}`,
        "N·s",
        jumps.map((jump) => {
          const named = side === "both" ? jump.limb : side;
          // A single-leg trial's only limb is its whole body.
          if (side !== "both" && jump.limb !== "both") return undefined;
          return readingOf(trialOf(jump), `${phase}Impulse`, named, jump.truth.phases[phase].grossImpulse[named]);
        }),
      ),
    ),
  );
}

type Unit = keyof typeof scales;
const scales = { "%": 100, mm: 1000, "mm/s": 1000, ms: 1000, N·s: 1 } as const;

function summarise(name: string, unit: Unit, found: readonly (Reading | undefined)[]): CoverageRow {
  const readings = found.filter((each) => each !== undefined);
  const scaled = (reading: Reading, value: number): number =>
    (scales[unit] * value) / (unit === "%" ? reading.relativeTo : 1);
  const errors = readings.map((each) => Math.abs(scaled(each, each.error)));
  const ratios = readings.map((each) => each.error / each.uncertainty);
  const mean = ratios.reduce((sum, each) => sum + each, 0) / ratios.length;
  return {
    name,
    unit,
    trials: readings.length,
    coverage: ratios.filter((each) => Math.abs(each) <= intervalFactor).length / ratios.length,
    medianError: quantile(errors, 0.5),
    errorP95: quantile(errors, 0.95),
    medianUncertainty: quantile(
      readings.map((each) => scaled(each, each.uncertainty)),
      0.5,
    ),
    spread: Math.sqrt(ratios.reduce((sum, each) => sum + (each - mean) ** 2, 0) / ratios.length),
    shift: mean,
  };
}

/** Undefined where the trial has no such measure: on one plate no limb is told apart. */
function readingOf(trial: TrialResult, id: string, side: MeasureSide, truth: number): Reading | undefined {
  const measure = trial.measures.find((each) => each.id === id && each.side === side);
  if (measure?.uncertainty === undefined) return undefined;
  return { error: measure.value - truth, uncertainty: measure.uncertainty, relativeTo: truth };
}

function eventReading(trial: TrialResult, name: string, truth: number): Reading | undefined {
  const event = trial.events.find((each) => each.name === name && each.side === undefined);
  if (event?.uncertainty === undefined) return undefined;
  return { error: event.time - truth, uncertainty: event.uncertainty, relativeTo: 1 };
}
