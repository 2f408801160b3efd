import type { Limb, Side } from "../../core/ground/limb.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { withoutZero } from "./plain-contacts.ts";
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

/** A plate with its zero removed. */
export interface PlainPlate {
  readonly limb: Limb;
  readonly force: PlainForce;
}

/** The plates of a trial, their zeros removed. */
export function zeroedPlates(trial: PlainTrial, settings: Settings): PlainPlate[] {
  const forces = trial.plates.map((plate) => ({ rateHz: trial.rateHz, samples: plate.samples }));
  return withoutZero(forces, settings).map((force, index) => ({ limb: trial.plates[index]!.limb, force }));
}

/** The limbs of a two-leg trial on a plate each; none where one plate carries both or a single leg jumps. */
export function limbsOf(plates: readonly PlainPlate[], limb: Limb): { side: Side; force: PlainForce }[] {
  const limbs: { side: Side; force: PlainForce }[] = [];
  if (limb !== "both") return limbs;
  for (const plate of plates) if (plate.limb !== "both") limbs.push({ side: plate.limb, force: plate.force });
  return limbs;
}

/**
 * Adds the body-size forms (METHODS §5): newtons per kilogram and per body weight, watts and newton-seconds per
 * kilogram. METHODS leaves open which measures have them; the catalogue gives the net impulses of a limb none.
 */
export function withBodySizes(measures: readonly PlainMeasure[], weight: number, mass: number): PlainMeasure[] {
  const forces = /^(peak|mean).*Force$|^forceAtLowestPosition$/;
  const perMass =
    /^(peak|mean|forceAt).*(Force|Position|Power)$|^(unweighting|braking|propulsion|landing)(Net)?Impulse$/;
  const more: PlainMeasure[] = [];
  for (const { id, side, value } of measures) {
    if (perMass.test(id)) more.push({ id: `${id}PerBodyMass`, side, value: value / mass });
    if (forces.test(id)) more.push({ id: `${id}PerBodyWeight`, side, value: value / weight });
  }
  return [...measures, ...more];
}
