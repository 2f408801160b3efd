import type { Finding } from "../../core/finding.ts";
import type { TrialResult } from "../../core/result.ts";
import { legsOf, testWords } from "../shell/words.ts";

/** A trial with its place in the session. */
export interface ListedTrial {
  readonly trial: TrialResult;
  /** Counted from 1 among the trials of the same test and limb; 0 where the test is unknown. */
  readonly attempt: number;
}

export interface TrialGroup {
  readonly title: string;
  readonly trials: readonly ListedTrial[];
}

/** The trials grouped by test and legs, each group in the order of the session; those without a test come last. */
export function groupTrials(trials: readonly TrialResult[]): readonly TrialGroup[] {
  const groups = new Map<string, ListedTrial[]>();
  const counts = new Map<string, number>();
  const unknown: ListedTrial[] = [];
  for (const trial of trials) {
    if (trial.test === undefined || trial.limb === undefined) {
      unknown.push({ trial, attempt: 0 });
      continue;
    }
    const counted = `${trial.test} ${trial.limb}`;
    const attempt = (counts.get(counted) ?? 0) + 1;
    counts.set(counted, attempt);
    const title = testWords(trial.test, legsOf(trial.limb));
    groups.set(title, [...(groups.get(title) ?? []), { trial, attempt }]);
  }
  const named = [...groups].map(([title, listed]) => ({ title, trials: listed }));
  return unknown.length === 0 ? named : [...named, { title: "Not analysed", trials: unknown }];
}

/** Identifies a trial within its session. */
export function trialKey(trial: Pick<TrialResult, "file" | "trial">): string {
  return `${trial.file}#${trial.trial}`;
}

/** The finding that asks for eyes first; absent when nothing does. */
export function foremostFinding(findings: readonly Finding[]): Finding | undefined {
  return findings.find((each) => each.severity === "refusal") ?? findings.find((each) => each.severity === "warning");
}
