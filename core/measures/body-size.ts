import { measureEntry } from "./catalogue.ts";
import type { RawMeasure } from "./raw-measure.ts";

/** The same measures divided by body mass or body weight, as their catalogue entries ask. */
export function bodySizeForms(measures: readonly RawMeasure[], weightNewtons: number, massKg: number): RawMeasure[] {
  return measures.flatMap((measure) =>
    measureEntry(measure.id).forms.map((form) => {
      const size = form === "PerBodyMass" ? massKg : weightNewtons;
      return {
        id: `${measure.id}${form}`,
        side: measure.side,
        value: measure.value / size,
        noise: measure.noise / size,
      };
    }),
  );
}
