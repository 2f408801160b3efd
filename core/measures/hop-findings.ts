import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** Says when fewer hops than wanted stand for a bout (METHODS §6). */
export function hopFindings(
  context: MeasureContext,
  expected: readonly MeasureId[],
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { jump, usedHops = [] } = context;
  if (jump.hops === undefined || usedHops.length >= settings.bestHops) return [];
  const used = usedHops.length;
  const found = measures.find((measure) => measure.id === "hopsFound")?.value ?? 0;
  return [
    finding(
      "hops-few",
      "warning",
      { found, used, wanted: settings.bestHops, contactLimitSeconds: settings.slowContactSeconds },
      { removes: absentMeasures(["reactiveStrengthIndexBestFive", "hopStiffness"], expected, measures) },
    ),
  ];
}
