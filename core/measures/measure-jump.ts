import type { InputUncertainties } from "../events/input-uncertainties.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import { bodySizeForms } from "./body-size.ts";
import { measureContact } from "./contact.ts";
import { measureHops } from "./hops.ts";
import { measureLanding } from "./landing.ts";
import type { Measure } from "./measure.ts";
import { measurePhases } from "./phase-forces.ts";
import { measurePower } from "./power.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { measureStabilisation } from "./stabilisation.ts";
import { propagate } from "./uncertainty/propagate.ts";
import { measureWholeJump } from "./whole-jump.ts";

/**
 * Every measure of a trial in catalogue order, each with its standard uncertainty where one can be derived.
 * A measure that is not a finite number is left out: the caller names what is missing in a finding.
 */
export function measureJump(
  context: MeasureContext,
  uncertainties: InputUncertainties,
  settings: Settings,
): readonly Measure[] {
  const values = measureValues(context, settings);
  const spread = propagate(context, values, uncertainties, (varied) => measureValues(varied, settings), settings);
  // No uncertainty can be derived for the time to stabilisation: it depends on the length of the recording.
  const stabilisation = measureStabilisation(context, settings);
  const known = new Map<string, Known[]>();
  const add = (raw: RawMeasure, uncertainty: number | undefined): void => {
    const sides = known.get(raw.id);
    if (sides === undefined) known.set(raw.id, [{ raw, uncertainty }]);
    else sides.push({ raw, uncertainty });
  };
  for (const [index, raw] of values.entries()) add(raw, spread[index]);
  for (const raw of stabilisation) add(raw, undefined);
  return measureCatalogue.flatMap(({ id, unit }) => {
    const sides = known.get(id);
    if (sides === undefined) return [];
    return (["both", "left", "right"] as const).flatMap((side): Measure[] => {
      const found = sides.findLast(({ raw }) => raw.side === side);
      if (found === undefined || !Number.isFinite(found.raw.value)) return [];
      const { value } = found.raw;
      const { uncertainty } = found;
      return [
        { id, side, value, unit, ...(uncertainty !== undefined && isKnown(uncertainty, value) ? { uncertainty } : {}) },
      ];
    });
  });
}

interface Known {
  readonly raw: RawMeasure;
  readonly uncertainty: number | undefined;
}

/**
 * Below this part of a value an uncertainty is rounding: no input moved it, so none could be derived. No setting:
 * rounding of doubles.
 */
const roundingFraction = 1e-9;

function isKnown(uncertainty: number, value: number): boolean {
  return Number.isFinite(uncertainty) && uncertainty > roundingFraction * Math.abs(value);
}

function measureValues(context: MeasureContext, settings: Settings): RawMeasure[] {
  const plain = [
    ...measureWholeJump(context, settings),
    ...measureContact(context, settings),
    ...measureHops(context, settings),
    ...measurePhases(context, settings),
    ...measurePower(context, settings),
    ...measureLanding(context, settings),
  ];
  const { weightNewtons, gravity } = context.jump.motion;
  return [...plain, ...bodySizeForms(plain, weightNewtons, weightNewtons / gravity)];
}
