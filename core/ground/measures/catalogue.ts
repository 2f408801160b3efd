import type { UcumUnit } from "../units.ts";
import { landingEntries } from "./landing-entries.ts";
import type { BodySizeForm, MeasureEntry, PlainEntry } from "./measure-entry.ts";
import { phaseEntries } from "./phase-entries.ts";
import { wholeEntries } from "./whole-entries.ts";

export { type MeasureEntry, type MeasureGroup, measureGroups } from "./measure-entry.ts";

const plain: readonly PlainEntry[] = [...wholeEntries, ...phaseEntries, ...landingEntries];

const perMassUnits: Partial<Record<UcumUnit, UcumUnit>> = { N: "N/kg", W: "W/kg", "N.s": "N.s/kg" };

function bodySizeEntry(entry: PlainEntry, form: BodySizeForm): MeasureEntry {
  const perMass = form === "PerBodyMass";
  const unit = perMass ? perMassUnits[entry.unit] : "1";
  if (unit === undefined) throw new RangeError(`${entry.id} has no form per body mass.`);
  return {
    ...entry,
    id: `${entry.id}${form}`,
    unit,
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
