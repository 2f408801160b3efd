import { type Finding, finding } from "../finding.ts";
import type { Settings } from "../settings.ts";
import { absentMeasures } from "./absent-measures.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** Says when fewer hops than wanted stand for a bout (METHODS §6). */
export function hopFindings(
  context: MeasureContext,
  expected: readonly string[],
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { jump, limb, usedHops = [] } = context;
  if (jump.hops === undefined || usedHops.length >= settings.bestHops) return [];
  const quick = limb === "both" ? ` with a contact below ${Math.round(1000 * settings.slowContactSeconds)} ms` : "";
  const found = measures.find((measure) => measure.id === "hopsFound")?.value ?? 0;
  return [
    finding(
      "hops-few",
      "warning",
      usedHops.length === 0
        ? `None of ${found} hops is one${quick}, so there is no mean.`
        : `Only ${usedHops.length} of ${found} hops count${quick}; ${settings.bestHops} are wanted, and these stand for the bout.`,
      "Record a longer bout, with short contacts, if the athlete may hop again.",
      { removes: absentMeasures(["reactiveStrengthIndexBestFive", "hopStiffness"], expected, measures) },
    ),
  ];
}
