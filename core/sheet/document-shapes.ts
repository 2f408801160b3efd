import type { Criterion } from "../criteria/criterion.ts";
import type { Bearer, Side } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Status } from "../ground/status.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { PublishedUnit } from "../ground/units.ts";
import type { Measure } from "../measures/measure.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Comparison, Interval, IntervalSource } from "../sides/comparison.ts";
import type { GainDifference } from "../weight/plate-gains.ts";
import type { DocumentFinding } from "./document-finding.ts";

/**
 * One trial as published. Beside the keys of METHODS §10 it carries `timeOrigin`, `span` and `weight` (how the numbers
 * were made) and `edits`, `excluded` and `practice` (what a person decided: they identify a result). The *seen* mark stays
 * out: it is a mark of the work in progress and changes no number. While feet are in doubt (`feet`), a limb's measures,
 * events and contact times carry `plate`, the place from 1 in `plates`, and no `side`. `limb` is as stated; it is absent
 * where only the loaded plate's unproved name told it. `legs` says how many legs jumped in any case.
 */
export type DocumentTrial = Omit<TrialResult, "seen" | "sha256" | "recognised" | "measures" | "findings"> & {
  readonly recognised?: { readonly test: TestKind; readonly reason: string };
  readonly findings: readonly DocumentFinding[];
  readonly legs?: "both" | "single";
  readonly measures: readonly DocumentMeasure[];
  /** Absent where the bytes could not be read at all. */
  readonly sha256?: string;
};

/** One measure as published. */
export type DocumentMeasure = Measure & { readonly unit: PublishedUnit };

/** One side, or one plate while feet are in doubt, of a comparison as published. */
export type DocumentSide = Bearer<Side> & DocumentValues;
interface DocumentValues {
  /** Number of trials used. */
  readonly trials: number;
  /** Their values in trial order, in the unit of the comparison. */
  readonly values: readonly number[];
  /** The trial statistic of the settings; absent when no trial has the measure. */
  readonly mean?: number;
  readonly meanPerBodyMass?: number;
}

/**
 * One comparison as published: `involved` and `uninvolved`, `left` and `right` where nobody or both are injured, or
 * `plate1` and `plate2` while feet are in doubt.
 */
export interface DocumentComparison {
  /** The session's folder. */
  readonly session: string;
  readonly test: Comparison["test"];
  readonly legs: Comparison["legs"];
  /** The box all its trials were from, metres; box heights are never mixed. */
  readonly dropHeightMetres?: number;
  readonly measure: MeasureId;
  readonly unit: Comparison["unit"];
  readonly basis: Comparison["basis"];
  readonly role: Comparison["role"];
  readonly involved?: DocumentSide;
  readonly uninvolved?: DocumentSide;
  readonly left?: DocumentSide;
  readonly right?: DocumentSide;
  readonly plate1?: DocumentSide;
  readonly plate2?: DocumentSide;
  /** 100 × involved / uninvolved, or 100 × left / right; per cent. */
  readonly index?: number;
  /** First minus second side in the unit of the measure, for times. */
  readonly difference?: number;
  readonly intervals: readonly Interval[];
  readonly intervalFrom?: IntervalSource;
  /** The leg that led off the box in each trial, in step with the values, where both leads are averaged. */
  readonly leads?: readonly Side[];
  /** Why trials that exist cannot be held against each other. */
  readonly notComparable?: string;
  /** How much more the plates of the first side read than those of the second, a part; in the intervals. */
  readonly plateShare?: GainDifference;
  /** Why the index decides nothing although it could be formed. */
  readonly contradiction?: string;
  /** How well it is known which foot stood on which plate; of single-leg trials only where it is in doubt. */
  readonly plates?: Comparison["plates"];
  /** Threshold and status of the symmetry criterion that reads this comparison, where the set has one. */
  readonly threshold?: number;
  readonly status?: Status;
  /** Words that belong directly behind that status word. */
  readonly qualifier?: string;
  readonly reason: string;
}

/** One criterion as it stands, as published. */
export interface DocumentCriterion {
  readonly session: string;
  readonly set: { readonly id: string; readonly version: number };
  readonly id: string;
  readonly kind: Criterion["kind"];
  readonly test: Criterion["test"];
  readonly legs: Criterion["legs"];
  readonly measure: MeasureId;
  /** The box the criterion belongs to, metres. */
  readonly dropHeightMetres?: number;
  /** In per cent, or in `unit` where there is one; the same for estimate and interval. */
  readonly threshold: number;
  readonly unit?: Comparison["unit"];
  readonly status: Status;
  /** Words that belong directly behind the status word. */
  readonly qualifier?: string;
  readonly estimate?: number;
  readonly lean?: "met" | "not-met";
  readonly interval?: Interval;
  readonly reason: string;
  readonly moreTrials: string;
  readonly caution: string;
}
