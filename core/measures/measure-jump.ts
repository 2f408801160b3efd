import type { InputUncertainties } from "../events/input-uncertainties.ts";
import type { Settings } from "../settings.ts";
import { bodySizeForms } from "./body-size.ts";
import { measureCatalogue } from "./catalogue.ts";
import { measureContact } from "./contact.ts";
import { measureHops } from "./hops.ts";
import { measureLanding } from "./landing.ts";
import type { Measure } from "./measure.ts";
import { measurePhases } from "./phase-forces.ts";
import { measurePower } from "./power.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";
import { measureStabilisation } from "./stabilisation.ts";
import { propagate } from "./uncertainty.ts";
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
  const known = new Map(values.map((raw, index) => [`${raw.id} ${raw.side}`, { raw, uncertainty: spread[index] }]));
  for (const raw of stabilisation) known.set(`${raw.id} ${raw.side}`, { raw, uncertainty: undefined });
  return measureCatalogue.flatMap((entry) =>
    (["both", "left", "right"] as const).flatMap((side) => {
      const found = known.get(`${entry.id} ${side}`);
      if (found === undefined || !Number.isFinite(found.raw.value)) return [];
      const { raw, uncertainty } = found;
      return [
        {
          id: raw.id,
          side,
          value: raw.value,
          unit: entry.unit,
          ...(uncertainty !== undefined && isKnown(uncertainty, raw.value) ? { uncertainty } : {}),
        },
      ];
    }),
  );
}

/** Below this part of a value an uncertainty is rounding: no input moved it, so none could be derived. */
const roundingFraction = 1e-9;

function isKnown(uncertainty: number, value: number): boolean {
  return Number.isFinite(uncertainty) && uncertainty > roundingFraction * Math.abs(value);
}

function measureValues(context: MeasureContext, settings: Settings): RawMeasure[] {
  const plain = [
    ...measureWholeJump(context, settings),
    ...measureContact(context, settings),
    ...measureHops(context, settings),
    ...measurePhases(context),
    ...measurePower(context),
    ...measureLanding(context, settings),
  ];
  const { weightNewtons, gravity } = context.jump.motion;
  return [...plain, ...bodySizeForms(plain, weightNewtons, weightNewtons / gravity)];
}
