import type { UcumUnit } from "../units.ts";
import { landingEntries } from "./landing-entries.ts";
import type { BodySizeForm, MeasureEntry as EntryOf, PlainEntry } from "./measure-entry.ts";
import { phaseEntries } from "./phase-entries.ts";
import { wholeEntries } from "./whole-entries.ts";

export { type MeasureGroup, measureGroups } from "./measure-entry.ts";

const entries = [...wholeEntries, ...phaseEntries, ...landingEntries] as const;

type Written = (typeof entries)[number];

/** The identifiers of a written entry: its own, and one for each of its body-size forms. */
type IdsOf<Entry> = Entry extends { readonly id: infer Id extends string }
  ? Id | (Entry extends { readonly forms: readonly (infer Form extends BodySizeForm)[] } ? `${Id}${Form}` : never)
  : never;

/** The public identifiers of the measures (METHODS §5); a typo does not compile. */
export type MeasureId = IdsOf<Written>;

/** Those of measures that are no body-size form of another. */
export type PlainMeasureId = Written["id"];

export type MeasureEntry = EntryOf<MeasureId>;

const plain: readonly PlainEntry[] = entries;

const perMassUnits: Partial<Record<UcumUnit, UcumUnit>> = { N: "N/kg", W: "W/kg", "N.s": "N.s/kg" };

function bodySizeEntry(entry: PlainEntry, form: BodySizeForm): MeasureEntry {
  const perMass = form === "PerBodyMass";
  const unit = perMass ? perMassUnits[entry.unit] : "1";
  if (unit === undefined) throw new RangeError(`${entry.id} has no form per body mass.`);
  return {
    ...entry,
    id: `${entry.id}${form}` as MeasureId,
    unit,
    perLimb: entry.perLimb ?? false,
    forms: [],
    informationOnly: entry.informationOnly ?? false,
    formOf: entry.id as MeasureId,
  };
}

/** Every measure in the order of screens, a body-size form right behind the measure it was made from. */
export const measureCatalogue: readonly MeasureEntry[] = plain.flatMap((entry) => [
  {
    ...entry,
    id: entry.id as MeasureId,
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

/** Whether a text from outside names a measure. */
export function isMeasureId(text: string): text is MeasureId {
  return byId.has(text);
}
