import type { Limb } from "../../core/limb.ts";
import {
  type MeasureEntry,
  type MeasureGroup,
  measureCatalogue,
  measureGroups,
} from "../../core/measures/catalogue.ts";
import type { Measure } from "../../core/measures/measure.ts";
import type { TrialResult } from "../../core/result.ts";

/** One measure of a trial with its value for each column. */
export interface MeasureRow {
  readonly entry: MeasureEntry;
  readonly values: Readonly<Partial<Record<Limb, Measure>>>;
}

export interface MeasureRowGroup {
  readonly group: MeasureGroup;
  readonly rows: readonly MeasureRow[];
}

/**
 * The rows of a trial's table, from the catalogue: every measure the trial has, and every one a finding says could not
 * be made. A measure that neither has nor misses does not belong to this kind of trial.
 * @param forms false: plain measures; true: their body-size forms
 */
export function measureRows(trial: TrialResult, forms: boolean): readonly MeasureRowGroup[] {
  const removed = new Set(trial.findings.flatMap((finding) => finding.removes));
  const rows = measureCatalogue
    .filter((entry) => (entry.formOf !== undefined) === forms)
    .map((entry) => ({ entry, values: valuesOf(trial.measures, entry.id) }))
    .filter(({ entry, values }) => Object.keys(values).length > 0 || removed.has(entry.id));
  return measureGroups
    .map((group) => ({ group, rows: rows.filter((row) => row.entry.group === group) }))
    .filter(({ rows: ofGroup }) => ofGroup.length > 0);
}

function valuesOf(measures: readonly Measure[], id: string): MeasureRow["values"] {
  return Object.fromEntries(measures.filter((each) => each.id === id).map((each) => [each.side, each]));
}

/** The columns a trial needs: both limbs together first, then each limb that has a value. */
export function measureColumns(trial: TrialResult, order: readonly Limb[]): readonly Limb[] {
  const present = new Set<Limb>(trial.measures.map((measure) => measure.side));
  const columns = (["both", ...order] as const).filter((limb) => present.has(limb));
  return columns.length > 0 ? columns : [trial.limb ?? "both"];
}

/** True for measures that count something. */
export function isCount({ id }: MeasureEntry): boolean {
  return id === "hopsFound" || id === "hopsUsed";
}
