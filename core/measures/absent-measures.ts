import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Measure } from "./measure.ts";

/** Identifiers of `wanted` that the trial's test has and that were not made. */
export function absentMeasures(
  wanted: readonly MeasureId[],
  expected: readonly MeasureId[],
  measures: readonly Measure[],
): readonly MeasureId[] {
  return wanted.filter((id) => expected.includes(id) && !measures.some((measure) => measure.id === id));
}

/** Identifiers of the measures of a trial's test that were not made and that no finding has named yet. */
export function unnamedMeasures(
  expected: readonly MeasureId[],
  measures: readonly Measure[],
  findings: readonly Finding[],
): readonly MeasureId[] {
  const named = new Set(findings.flatMap((each) => each.removes));
  return absentMeasures(expected, expected, measures).filter((id) => !named.has(id));
}

/** Names the measures of a trial's test that were not made and that no finding has named yet. */
export function unnamedAbsences(
  expected: readonly MeasureId[],
  measures: readonly Measure[],
  findings: readonly Finding[],
): readonly Finding[] {
  const removes = unnamedMeasures(expected, measures, findings);
  if (removes.length === 0) return [];
  return [finding("measure-not-made", "warning", { measures: removes }, { removes })];
}
