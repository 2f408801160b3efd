import { type Finding, proseFinding } from "../ground/finding.ts";
import { countOf } from "../ground/plain-words.ts";
import type { Settings } from "../settings/settings.ts";
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
  const { jump, usedHops = [] } = context;
  if (jump.hops === undefined || usedHops.length >= settings.bestHops) return [];
  const used = usedHops.length;
  const found = measures.find((measure) => measure.id === "hopsFound")?.value ?? 0;
  const limit = `a contact below ${Math.round(1000 * settings.slowContactSeconds)} ms`;
  const stand = `${settings.bestHops} are wanted, and ${used === 1 ? "it stands" : "these stand"} for the bout.`;
  return [
    proseFinding(
      "hops-few",
      "warning",
      used === 0
        ? `None of ${countOf(found, "hop")} has ${limit}, so there is no mean.`
        : used === found
          ? `The bout has only ${countOf(found, "hop")}; ${stand}`
          : `Only ${used} of ${found} hops ${used === 1 ? "has" : "have"} ${limit}; ${stand}`,
      "Record a longer bout, with short contacts, if the athlete may hop again.",
      { removes: absentMeasures(["reactiveStrengthIndexBestFive", "hopStiffness"], expected, measures) },
    ),
  ];
}
