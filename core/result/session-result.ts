import type { CriteriaSet, CriterionResult } from "../criteria/criterion.ts";
import type { KneeRow } from "../criteria/knee-rows.ts";
import type { Gate } from "../gate/gate.ts";
import type { Finding } from "../ground/finding.ts";
import type { Comparison } from "../sides/comparison.ts";
import type { SessionDescription } from "../stated/session.ts";
import type { AthleteQuestion } from "../weight/another-athlete.ts";
import type { PlateDifference } from "../weight/plate-gains.ts";
import type { TrialResult } from "./trial-result.ts";

/** One folder of recordings with what was said about it, analysed. */

export interface SessionResult {
  /** Folder relative to the argument it was found under; empty for loose files. */
  readonly folder: string;
  readonly description: SessionDescription;
  /** Gravity the session was analysed with, m/s²: stated, else from its description, else from the settings. */
  readonly gravity?: number;
  readonly trials: readonly TrialResult[];
  readonly comparisons: readonly Comparison[];
  readonly criteriaSet: CriteriaSet;
  readonly criteria: readonly CriterionResult[];
  /** What closes jump tests today, and what was answered and read. */
  readonly gate: Gate;
  /** The knee's own rows: they stand whatever is closed. */
  readonly knee: readonly KneeRow[];
  /** The plates against each other, as the session's standing tells; absent where one plate or none was used. */
  readonly plateDifferences?: readonly PlateDifference[];
  /** Weights that no one person can have, until somebody says whose they are; absent where nothing is asked. */
  readonly athleteQuestion?: AthleteQuestion;
  /** About the session as a whole (session.json entries nobody used, plates that contradict, weights that differ). */
  readonly findings: readonly Finding[];
}
