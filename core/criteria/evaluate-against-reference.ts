import { oppositeSide } from "../ground/limb.ts";
import { measureEntry } from "../ground/measures/catalogue.ts";
import { dateInWords } from "../ground/plain-words.ts";
import { percentThreshold } from "../ground/threshold.ts";
import type { Settings } from "../settings/settings.ts";
import { english } from "../words/english.ts";
import type { CriteriaInput } from "./criteria-input.ts";
import type { Criterion, CriterionResult } from "./criterion.ts";
import { comparisonOf } from "./criterion-comparison.ts";
import { decideStatus, statusOf } from "./decide-status.ts";
import { feetReason } from "./feet-reason.ts";
import { meanInterval } from "./mean-interval.ts";
import { moreTrialsSentence, trialsAllowed } from "./more-trials.ts";
import { latestReference, valueText } from "./reference-value.ts";

type AgainstReference = Criterion & { readonly kind: "against-reference" };

/**
 * One criterion of the involved leg against the uninvolved leg's value from before; the gate is open. The interval is
 * the t interval of today's value, as a part of the reference: the reference is one number of unknown uncertainty.
 */
export function evaluateAgainstReference(
  criterion: AgainstReference,
  input: CriteriaInput,
  settings: Settings,
): CriterionResult {
  const plain = { criterion, moreTrials: "", caution: "" };
  const { involved } = input;
  if (involved === "both") {
    const reason = "Both knees are involved: there is no uninvolved leg to hold this against.";
    return { ...plain, status: "not-applicable", reason };
  }
  if (involved === "none") {
    return { ...plain, status: "not-applicable", reason: "Nobody is injured: there is no involved leg." };
  }
  const { unit } = measureEntry(criterion.measure);
  const other = oppositeSide(involved);
  const comparison = comparisonOf(criterion, input.comparisons);
  const reference = latestReference(input.references, comparison ?? criterion, other, unit);
  if (reference === undefined) {
    const reason = `No pre-injury or pre-operative value of the uninvolved (${other}) leg is known in this measure.`;
    return { ...plain, status: "no-reference", reason };
  }
  const doubt = feetReason(comparison?.plates);
  if (doubt !== "") return { ...plain, status: "not-measured", reason: doubt };
  const values = comparison?.first.values ?? [];
  const today = comparison?.first.mean;
  if (today === undefined) {
    const reason = `No single-leg ${english.tests.label(criterion.test)} of the ${involved} leg that counts has this measure.`;
    return { ...plain, status: "not-measured", reason };
  }
  if (values.length < settings.minimumTrialsPerSide) {
    const reason = `Too few trials: ${involved} ${values.length} of ${settings.minimumTrialsPerSide}.`;
    return { ...plain, status: "not-measured", reason };
  }

  const estimate = (100 * today) / reference.value;
  const intervalWith = (extraTrials: number) => {
    const { confidence, low, high } = meanInterval(values, today, settings, extraTrials);
    return { confidence, low: (100 * low) / reference.value, high: (100 * high) / reference.value };
  };
  const decided = decideStatus(
    `value of the ${involved} leg as a part of the ${other} leg's ${reference.origin} value`,
    estimate,
    values.length < 2 ? undefined : intervalWith(0),
    "From one trial no interval can be made.",
    percentThreshold(criterion.atLeastPercent),
  );
  const allowed = trialsAllowed(comparison ?? criterion, [involved], input, settings);
  const settles = (extra: number) => statusOf(intervalWith(extra), criterion.atLeastPercent) !== "too-close-to-call";
  return {
    criterion,
    ...decided,
    reason: `${decided.reason} Held against ${valueText(reference.value, unit)} of the ${other} leg, ${reference.origin}, ${dateInWords(reference.date)}.`,
    moreTrials:
      decided.status !== "too-close-to-call"
        ? ""
        : values.length < 2
          ? "With one trial the spread is unknown: whether more would settle this cannot be said."
          : moreTrialsSentence(allowed, `of the ${involved} leg`, settles, settings),
    caution: "",
  };
}
