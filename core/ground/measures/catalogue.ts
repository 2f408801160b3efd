import type { UcumUnit } from "../units.ts";
import { landingEntries } from "./landing-entries.ts";
import type { BodySizeForm, MeasureEntry, MeasureGroup, PlainEntry } from "./measure-entry.ts";
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
