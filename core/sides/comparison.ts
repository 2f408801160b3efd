import type { Bearer, InvolvedSide, Side } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { TestKind } from "../ground/test-kind.ts";
import type { UcumUnit } from "../ground/units.ts";
import type { FeetInDoubt } from "../recording/recording.ts";
import type { PlateGains } from "../weight/plate-gains.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import type { PlateShareOfIndex } from "./plate-share.ts";

/** The trials of one side, or of one plate while feet are in doubt. */
export type SideSummary = Bearer<Side> & TrialsSummary;

interface TrialsSummary {
  /** Values of the trials used, in trial order. */
  readonly values: readonly number[];
  /**
   * The trial statistic of the settings (mean by default); absent when no trial has the measure. Where both leads off a
   * box are averaged: the mean of the statistics of the two leads.
   */
  readonly mean?: number;
  /** The same per kilogram of body mass where that makes sense; absent otherwise. */
  readonly meanPerBodyMass?: number;
}

/** A two-sided interval of an index in per cent. */
export interface Interval {
  readonly confidence: number;
  readonly low: number;
  readonly high: number;
}

/**
 * `paired trials`: within each two-leg trial; `independent trials`: between single-leg trials; `measurement
 * uncertainty`: a side has one trial, so the spread between trials is not in it.
 */
export type IntervalSource = "paired trials" | "independent trials" | "measurement uncertainty";

/** One measure of one test, side against side (METHODS §8). */
export interface Comparison {
  readonly test: TestKind;
  /** `both`: within two-leg trials on two plates; `single`: between single-leg trials of the two sides. */
  readonly legs: "both" | "single";
  /** The box all its trials were from, metres; absent where nobody stated it or no box was used. */
  readonly dropHeightMetres?: number;
  readonly measure: MeasureId;
  readonly unit: UcumUnit;
  /**
   * Nobody injured: left over right. Both knees involved: values only, no index. Feet in doubt in every trial that counts:
   * plate 1 and plate 2, values only, whoever is injured. Where some are known, only those are compared.
   */
  readonly basis: "involved-uninvolved" | "left-right" | "values-only" | "plates";
  /** The involved side, the left side where nobody or both are injured, or plate 1. */
  readonly first: SideSummary;
  readonly second: SideSummary;
  /** 100 × first / second; absent when a side has no value or one that is not positive, or the basis is values only. */
  readonly index?: number;
  /** first − second in the unit of the measure, for times, which are compared as differences only. */
  readonly difference?: number;
  /** The status confidence first, the drawn confidence second; empty where none is bounded. */
  readonly intervals: readonly Interval[];
  /** How the interval was made, or why there is none; a plain sentence. */
  readonly intervalNote: string;
  /** What the intervals were made from; absent where there are none. */
  readonly intervalFrom?: IntervalSource;
  /** The leg that led off the box in each trial, in step with the values, where both leads are averaged. */
  readonly leads?: readonly Side[];
  /** Why trials that exist cannot be held against each other, a plain sentence; absent where they can. */
  readonly notComparable?: string;
  /** What the plates have in the intervals; absent where their gain cancels or there is no index. */
  readonly plateShare?: PlateShareOfIndex;
  /** Why the index decides nothing although it could be formed, a plain sentence; absent where it may decide. */
  readonly contradiction?: string;
  /** How well it is known which foot stood where, the weakest of the trials that count; single-leg trials only in doubt. */
  readonly plates?: "proved" | FeetInDoubt;
  /** `criterion`: may meet a criterion; `information`: shown only (landing symmetry, net impulses between limbs). */
  readonly role: "criterion" | "information";
  /** Nobody injured: the weaker side in words; empty otherwise. */
  readonly weaker: string;
}

/** Everything the comparison of one session needs. */
export interface SidesInput {
  readonly involved: InvolvedSide;
  readonly trials: readonly ComparableTrial[];
  /** The session's plates against each other; absent: nothing is known of them but their tolerance. */
  readonly gains?: PlateGains;
}
