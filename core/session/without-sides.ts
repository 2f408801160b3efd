import type { TrialEvent } from "../events/event.ts";
import type { Finding } from "../ground/finding.ts";
import type { Side } from "../ground/limb.ts";
import { measureCatalogue } from "../ground/measures/catalogue.ts";
import type { LimbContactTime } from "../measures/hop-limb-times.ts";
import type { Measure } from "../measures/measure.ts";
import type { TrialResult } from "../result/trial-result.ts";

/** Right minus left: without sides their sign means nothing. */
const differences: ReadonlySet<string> = new Set(["limbTakeoffDifference", "limbTouchdownDifference"]);

/** What a limb's value is divided by its athlete's mass; a plate's is not. */
const perKilogram: ReadonlySet<string> = new Set(
  measureCatalogue.filter(({ id, formOf }) => formOf !== undefined && id.endsWith("PerBodyMass")).map(({ id }) => id),
);

/**
 * A trial as it may be told while its feet are in doubt (METHODS §8): what belongs to one limb carries its plate and no
 * side, nothing of it stands per kilogram, and what only sides give is left out and named in the finding that says why.
 * @param plateOf the place from 1 of the plate that the value of a side was made on
 */
export function withoutSides(
  trial: TrialResult,
  plateOf: (side: Side) => number,
  doubt: { readonly feet: NonNullable<TrialResult["feet"]>; readonly finding: Finding },
): TrialResult {
  const { hops } = trial;
  const measures = trial.measures.flatMap((measure): readonly Measure[] => {
    const { side, plate: _plate, ...value } = measure;
    if (differences.has(value.id)) return [];
    if (side === undefined || side === "both") return [measure];
    return perKilogram.has(value.id) ? [] : [{ ...value, plate: plateOf(side) }];
  });
  const kept = new Set(measures.map(({ id }) => id));
  const removes = [...new Set(trial.measures.map(({ id }) => id))].filter((id) => !kept.has(id));
  return {
    ...trial,
    feet: doubt.feet,
    events: trial.events.map((event) => eventOnPlate(event, plateOf)),
    measures: inOrderOfPlates(measures),
    ...(hops === undefined
      ? {}
      : {
          hops: hops.map((hop) =>
            hop.limbs === undefined ? hop : { ...hop, limbs: hop.limbs.map((each) => timeOnPlate(each, plateOf)) },
          ),
        }),
    findings: [...trial.findings, { ...doubt.finding, removes }],
  };
}

function eventOnPlate({ side, ...event }: TrialEvent, plateOf: (side: Side) => number): TrialEvent {
  return side === undefined ? event : { ...event, plate: plateOf(side) };
}

function timeOnPlate({ side, contactTime, ...own }: LimbContactTime, plateOf: (side: Side) => number): LimbContactTime {
  return side === undefined ? { plate: own.plate ?? 0, contactTime } : { plate: plateOf(side), contactTime };
}

/** Within a measure plate 1 stands before plate 2, whatever the plates are called. */
function inOrderOfPlates(measures: readonly Measure[]): readonly Measure[] {
  const places = new Map(measures.map(({ id }, at) => [id, at] as const).reverse());
  return measures.toSorted(
    (a, b) => (places.get(a.id) ?? 0) - (places.get(b.id) ?? 0) || (a.plate ?? 0) - (b.plate ?? 0),
  );
}
