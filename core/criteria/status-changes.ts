import type { CriterionResult } from "./criterion.ts";
import { statusWords } from "./status.ts";

/**
 * What a decision (an exclusion, a moved event) did to the statuses, in one sentence: "It changes no status." or which
 * criterion went from which words to which. Both lists are of the same set, in its order.
 */
export function statusChanges(before: readonly CriterionResult[], after: readonly CriterionResult[]): string {
  const changed = after.flatMap((now) => {
    const then = before.find((each) => each.criterion.id === now.criterion.id);
    if (then === undefined || (then.status === now.status && then.qualifier === now.qualifier)) return [];
    return [`${now.criterion.label}: ${statusWords(then)} before, ${statusWords(now)} now`];
  });
  return changed.length === 0 ? "It changes no status." : `It changes a status. ${changed.join(". ")}.`;
}
