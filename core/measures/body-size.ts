import type { MeasureId } from "../ground/measures/catalogue.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { RawMeasure } from "./raw-measure.ts";

/** The identifiers of each measure's body-size forms, made once: the forms of a trial are made a dozen times. */
const formsOf: ReadonlyMap<string, readonly { readonly id: MeasureId; readonly isPerMass: boolean }[]> = new Map(
  measureCatalogue.map(({ id, forms }) => [
    id,
    forms.map((form) => ({ id: `${id}${form}` as MeasureId, isPerMass: form === "PerBodyMass" })),
  ]),
);

/** The same measures divided by body mass or body weight, as their catalogue entries ask. */
export function bodySizeForms(measures: readonly RawMeasure[], weightNewtons: number, massKg: number): RawMeasure[] {
  const all: RawMeasure[] = [];
  for (const { id: plainId, side, value, noise } of measures) {
    for (const { id, isPerMass } of formsOf.get(plainId) ?? []) {
      const size = isPerMass ? massKg : weightNewtons;
      all.push({ id, side, value: value / size, noise: noise / size });
    }
  }
  return all;
}
