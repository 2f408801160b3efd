import type { CriterionResult } from "./criterion.ts";

/** A criterion whose status a decision changed, as it stood and as it stands. */
interface StatusChange {
  readonly before: CriterionResult;
  readonly now: CriterionResult;
}

/**
 * What a decision (an exclusion, a moved event) did to the statuses: which criterion stands otherwise than before. Both
 * lists are of the same set, in its order.
 */
export function statusChanges(
  before: readonly CriterionResult[],
  after: readonly CriterionResult[],
): readonly StatusChange[] {
  return after.flatMap((now) => {
    const then = before.find((each) => each.criterion.id === now.criterion.id);
    if (then === undefined || (then.status === now.status && then.qualifier === now.qualifier)) return [];
    return [{ before: then, now }];
  });
}
