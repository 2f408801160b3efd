import type { Bearer, Side } from "../../core/ground/limb.ts";
import type { MeasureId } from "../../core/ground/measures/catalogue.ts";
import {
  type MeasureEntry,
  type MeasureGroup,
  measureCatalogue,
  measureGroups,
} from "../../core/ground/measures/catalogue.ts";
import type { Measure } from "../../core/measures/measure.ts";
import { trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { words } from "../words/words.ts";

/** One measure of a trial with its value for each column. */
export interface MeasureRow {
  readonly entry: MeasureEntry;
  /** By the name of what bears it: "both", "left", "plate 1". */
  readonly values: Readonly<Partial<Record<string, Measure>>>;
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

function valuesOf(measures: readonly Measure[], id: MeasureId): MeasureRow["values"] {
  return Object.fromEntries(measures.filter((each) => each.id === id).map((each) => [words.limbs.bearer(each), each]));
}

/** The columns a trial needs: both limbs together first, then each limb that has a value, or each plate. */
export function measureColumns(trial: TrialResult, order: readonly Side[]): readonly Bearer[] {
  const present = new Set(trial.measures.map(words.limbs.bearer));
  const possible: readonly Bearer[] = [
    ...(["both", ...order] as const).map((side) => ({ side })),
    ...trial.plates.map((_, index) => ({ plate: index + 1 })),
  ];
  const columns = possible.filter((each) => present.has(words.limbs.bearer(each)));
  return columns.length > 0 ? columns : [trialBearer(trial) ?? { side: "both" }];
}

/** True for measures that count something. */
export function isCount({ id }: MeasureEntry): boolean {
  return id === "hopsFound" || id === "hopsUsed";
}
