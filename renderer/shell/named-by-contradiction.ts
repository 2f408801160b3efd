import type { SessionResult } from "../../core/result/session-result.ts";
import { isNamedBy } from "../../core/sides/plate-proof.ts";

/**
 * The recordings that a contradiction about left and right speaks of: the single-leg trials it rests on, and the
 * two-leg trials it puts in doubt. None where nothing contradicts.
 */
export function namedByContradiction({ findings, trials }: SessionResult): ReadonlySet<string> {
  const contradictions = findings.filter((each) => each.code === "plates-contradict");
  const named = trials.filter(
    (trial) =>
      trial.findings.some((each) => each.code === "plates-contradict") ||
      contradictions.some((each) => isNamedBy(each, trial)),
  );
  return new Set(named.map((trial) => trial.file));
}
