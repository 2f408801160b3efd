import type { Finding } from "../../core/ground/finding.ts";
import type { TestKind } from "../../core/ground/test-kind.ts";
import { trialBearer } from "../../core/result/trial-bearer.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import { groupName, trialGroups } from "../../core/sheet/sheet-trials.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traces;

/** A trial with its place in the session. */
export interface ListedTrial {
  readonly trial: TrialResult;
  /** Counted from 1 among the trials of the same group and limb; 0 where the test is unknown, and for a practice jump. */
  readonly attempt: number;
}

export interface TrialGroup {
  /** "Drop jump, single-leg, from 0.20 m". */
  readonly title: string;
  /** Absent for what could not be analysed. */
  readonly test?: TestKind;
  readonly trials: readonly ListedTrial[];
}

/** The trials grouped by test, legs and box, each group in the order of the session; those without a test come last. */
export function groupTrials(trials: readonly TrialResult[]): readonly TrialGroup[] {
  const named = trialGroups(trials).map((group) => ({
    title: sentenceCase(groupName(group)),
    test: group.test,
    trials: counted(group.trials),
  }));
  const unknown = trials.filter((trial) => trial.test === undefined || trial.limb === undefined);
  if (unknown.length === 0) return named;
  return [...named, { title: prose.notAnalysed, trials: unknown.map((trial) => ({ trial, attempt: 0 })) }];
}

/** Attempts are counted for each limb, or each plate whose leg nobody knows, on its own; a practice jump is none. */
function counted(trials: readonly TrialResult[]): readonly ListedTrial[] {
  const counts = new Map<string, number>();
  return trials.map((trial) => {
    if (trial.practice === true) return { trial, attempt: 0 };
    const bearer = trialBearer(trial);
    const name = bearer === undefined ? "" : words.limbs.bearer(bearer);
    const attempt = (counts.get(name) ?? 0) + 1;
    counts.set(name, attempt);
    return { trial, attempt };
  });
}

/** Identifies a trial within its session. */
export function trialKey(trial: Pick<TrialResult, "file" | "trial">): string {
  return `${trial.file}#${trial.trial}`;
}

/** The finding that asks for eyes first; absent when nothing does. */
export function foremostFinding(findings: readonly Finding[]): Finding | undefined {
  return findings.find((each) => each.severity === "refusal") ?? findings.find((each) => each.severity === "warning");
}
