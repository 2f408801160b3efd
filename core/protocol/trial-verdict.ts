import { countsInMeans } from "../result/held-trial.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";

/** Whether a trial counts, in a word and a reason that fits on one line. */
export interface TrialVerdict {
  readonly counts: boolean;
  /** Why it does not, or what to look at although it does; empty where there is nothing to say. */
  readonly reason: string;
}

/**
 * Whether a trial may enter any mean at all (`countsInMeans`), and why not. Warnings are said and leave it in (METHODS
 * §7). Whether it counts for a test of a protocol is `countsFor`.
 */
export function trialVerdict(trial: TrialResult): TrialVerdict {
  return { counts: countsInMeans(trial), reason: reasonOf(trial) };
}

function reasonOf({ status, excluded, practice, held, findings }: TrialResult): string {
  if (excluded !== undefined) return `Excluded: ${excluded.reason}`;
  if (practice === true) return "A practice jump: its landings count, the jump does not.";
  if (held !== undefined && status !== "refused") return `Held: ${held.reason}`;
  const heaviest = status === "refused" ? "refusal" : "warning";
  const finding = findings.find((each) => each.severity === heaviest);
  return finding === undefined ? "" : findingInWords(finding, english).message;
}
