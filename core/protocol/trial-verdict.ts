import type { TrialResult } from "../result.ts";

/** Whether a trial counts, in a word and a reason that fits on one line. */
export interface TrialVerdict {
  readonly counts: boolean;
  /** Why it does not, or what to look at although it does; empty where there is nothing to say. */
  readonly reason: string;
}

/**
 * A trial counts unless it was refused, a person excluded it or it is held because its weight differs; other warnings
 * are said and leave it in (METHODS §7).
 */
export function trialVerdict({ status, excluded, held, findings }: TrialResult): TrialVerdict {
  if (excluded !== undefined) return { counts: false, reason: `Excluded: ${excluded.reason}` };
  if (held !== undefined && status !== "refused") return { counts: false, reason: `Held: ${held.reason}` };
  const heaviest = status === "refused" ? "refusal" : "warning";
  const reason = findings.find((each) => each.severity === heaviest)?.message ?? "";
  return { counts: status !== "refused", reason };
}
