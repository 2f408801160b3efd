import { closedFor } from "../gate/gate.ts";
import type { InvolvedSide, Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { CriteriaInput } from "./criteria-input.ts";
import type { CriteriaSet, Criterion, CriterionResult } from "./criterion.ts";
import { evaluateAbsolute } from "./evaluate-absolute.ts";
import { evaluateAgainstReference } from "./evaluate-against-reference.ts";
import { evaluateSymmetry } from "./evaluate-symmetry.ts";

/** Every criterion of a set as it stands today, in the order of the set (METHODS §8). What is closed is withheld. */
export function evaluateCriteria(
  set: CriteriaSet,
  input: CriteriaInput,
  settings: Settings,
): readonly CriterionResult[] {
  return set.criteria.map((criterion) => {
    const reason = closedFor(input.gate, criterion, limbsOf(criterion, input.involved));
    if (reason !== "") return { criterion, status: "withheld-today", reason, moreTrials: "", caution: "" };
    if (criterion.kind === "symmetry") return evaluateSymmetry(criterion, input, settings);
    if (criterion.kind === "absolute") return evaluateAbsolute(criterion, input, settings);
    return evaluateAgainstReference(criterion, input, settings);
  });
}

/** The limbs whose jumps a criterion needs: an index both, a value of the involved leg that one. */
function limbsOf({ kind, legs }: Criterion, involved: InvolvedSide): readonly Limb[] {
  if (legs === "both") return ["both"];
  return kind === "symmetry" || involved === "both" || involved === "none" ? ["left", "right"] : [involved];
}
