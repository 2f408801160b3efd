import type { Settings } from "../settings.ts";
import type { CriteriaInput } from "./criteria-input.ts";
import type { CriteriaSet, CriterionResult } from "./criterion.ts";
import { evaluateAbsolute } from "./evaluate-absolute.ts";
import { evaluateAgainstReference } from "./evaluate-against-reference.ts";
import { evaluateSymmetry } from "./evaluate-symmetry.ts";

/** Every criterion of a set as it stands today, in the order of the set (METHODS §8). A closed gate withholds all. */
export function evaluateCriteria(
  set: CriteriaSet,
  input: CriteriaInput,
  settings: Settings,
): readonly CriterionResult[] {
  return set.criteria.map((criterion) => {
    if (!input.gate.open) {
      return { criterion, status: "withheld-today", reason: input.gate.reason, moreTrials: "", caution: "" };
    }
    if (criterion.kind === "symmetry") return evaluateSymmetry(criterion, input, settings);
    if (criterion.kind === "absolute") return evaluateAbsolute(criterion, input, settings);
    return evaluateAgainstReference(criterion, input, settings);
  });
}
