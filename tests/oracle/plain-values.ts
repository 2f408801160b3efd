import type { Limb, Side } from "../../core/limb.ts";
import type { PlainForce } from "./plain-curve.ts";

/** One value of the oracle, under the public name of METHODS §5. */
export interface PlainMeasure {
  readonly id: string;
  readonly side: Limb;
  readonly value: number;
}

/** One event; limb events carry their side, events of a contact its number from 1. */
export interface PlainEvent {
  readonly name: string;
  readonly time: number;
  readonly side?: Side;
  readonly contactIndex?: number;
}

export interface PlainResult {
  readonly events: readonly PlainEvent[];
  readonly measures: readonly PlainMeasure[];
}

/** What the oracle is given: the plates of one trial and what was said about it. */
export interface PlainTrial {
  readonly rateHz: number;
  readonly plates: readonly { readonly limb: Limb; readonly samples: readonly number[] }[];
  readonly limb: Limb;
  readonly gravity: number;
  /** Entered, where the athlete never stands still in the recording. */
  readonly massKg?: number;
}

/** The plates of a two-leg trial, one a foot; none where one plate carries both or a single leg jumps. */
export function limbForces(trial: PlainTrial): { side: Side; force: PlainForce }[] {
  if (trial.limb !== "both") return [];
  const forces: { side: Side; force: PlainForce }[] = [];
  for (const plate of trial.plates) {
    if (plate.limb !== "both")
      forces.push({ side: plate.limb, force: { rateHz: trial.rateHz, samples: plate.samples } });
  }
  return forces;
}

/** Adds the body-size forms (METHODS §5): newtons per kilogram and per body weight, watts and newton-seconds per kilogram. */
export function withBodySizes(measures: readonly PlainMeasure[], weight: number, mass: number): PlainMeasure[] {
  const forces = /Force$|^forceAtLowestPosition$/;
  const perMass = /Force$|^forceAtLowestPosition$|Power$|Impulse$/;
  const more: PlainMeasure[] = [];
  for (const { id, side, value } of measures) {
    if (perMass.test(id)) more.push({ id: `${id}PerBodyMass`, side, value: value / mass });
    if (forces.test(id)) more.push({ id: `${id}PerBodyWeight`, side, value: value / weight });
  }
  return [...measures, ...more];
}
