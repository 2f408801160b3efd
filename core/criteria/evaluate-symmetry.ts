import { formatPercent, roundTo } from "../ground/format-number.ts";
import { asSentence, sentences } from "../ground/plain-words.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import { percentThreshold } from "../ground/threshold.ts";
import type { Settings } from "../settings/settings.ts";
import { boxHeightText } from "../sides/box-height.ts";
import type { Comparison } from "../sides/comparison.ts";
import { indexMoments, spreadIsKnown } from "../sides/index-moments.ts";
import { comparisonLimbCaution, ofComparisonLimb } from "../sides/other-injuries.ts";
import { widenedByPlates } from "../sides/plate-share.ts";
import { ratioInterval } from "../sides/ratio-interval.ts";
import { trialStatisticOf } from "../sides/trial-statistic.ts";
import { english } from "../words/english.ts";
import type { CriteriaInput } from "./criteria-input.ts";
import type { Criterion, CriterionResult } from "./criterion.ts";
import { askedTrials, comparisonOf, otherBoxes } from "./criterion-comparison.ts";
import { decideStatus, statusOf } from "./decide-status.ts";
import { feetReason } from "./feet-reason.ts";
import { moreTrialsSentence, trialsAllowed } from "./more-trials.ts";
import { latestReference, valueText } from "./reference-value.ts";

type Symmetry = Criterion & { readonly kind: "symmetry" };

/** "left 2 of 3, right 1 of 3": the sides with fewer trials than the settings ask for; empty where none is short. */
function missingTrials(comparison: Comparison, least: number): string {
  const { first, second, legs } = comparison;
  if (comparison.basis === "plates" && legs === "single") return "";
  if (legs === "both") {
    return first.values.length < least ? `${first.values.length} of ${least} two-leg trials` : "";
  }
  return [first, second]
    .filter((side) => side.values.length < least)
    .map((side) => `${english.limbs.bearer(side)} ${side.values.length} of ${least}`)
    .join(", ");
}

/** Why an index may not have a status at all; empty where it may. */
function obstacles(
  criterion: Symmetry,
  comparison: Comparison | undefined,
  comparisons: readonly Comparison[],
  settings: Settings,
): string {
  if (comparison === undefined) {
    const { dropHeightMetres: _asked, ...anyBox } = criterion;
    const elsewhere = comparisons.filter((each) => comparisonOf(anyBox, [each]) !== undefined);
    return sentences(
      `No ${askedTrials(criterion, criterion.legs === "both" ? "on two plates" : "")} that counts has this measure.`,
      otherBoxes(
        criterion,
        elsewhere.map((each) => each.dropHeightMetres),
      ),
    );
  }
  const missing = missingTrials(comparison, settings.minimumTrialsPerSide);
  const reasons = [
    feetReason(comparison.plates),
    missing === "" ? "" : `Too few trials: ${missing}.`,
    comparison.notComparable ?? "",
    platesApart(comparison, settings),
    comparison.contradiction ?? "",
  ].filter((each) => each !== "");
  if (reasons.length === 0 && comparison.index === undefined) return comparison.intervalNote;
  return reasons.join(" ");
}

/** Plates that read far apart decide no symmetry of forces, whatever their interval says. */
function platesApart({ plateShare }: Comparison, settings: Settings): string {
  if (plateShare === undefined || !(Math.abs(plateShare.difference) > settings.plateGainNoStatus)) return "";
  return `The plates read ${roundTo(100 * Math.abs(plateShare.difference), 2)}\u00a0% apart: no symmetry of forces has a status until a known mass on each shows which is right.`;
}

/** The box a criterion that names none was read from; empty in tests without a box. */
function boxWords(criterion: Symmetry, comparison: Comparison, comparisons: readonly Comparison[]): string {
  if (!startsFromBox(criterion.test) || criterion.dropHeightMetres !== undefined) return "";
  const { dropHeightMetres } = comparison;
  const box =
    dropHeightMetres === undefined ? "The box height is not stated." : `Box height ${boxHeightText(dropHeightMetres)}.`;
  const others = comparisons.filter((each) => each !== comparison && comparisonOf(criterion, [each]) !== undefined);
  return others.length === 0 ? box : `${box} Trials from other boxes are not in it.`;
}

/** The comparison limb is lower: a high index is met on paper only. Judged at the estimate, whatever the status. */
function highIndexCaution(comparison: Comparison, index: number, marks: readonly number[], settings: Settings): string {
  const { first, second, unit } = comparison;
  if (!(index > settings.indexHighPercent) || first.mean === undefined || second.mean === undefined) return "";
  return `The index of ${formatPercent(index, marks)} is above ${settings.indexHighPercent}\u00a0%: the comparison limb is lower, look at both (${english.limbs.bearer(first)} ${valueText(first.mean, unit)}, ${english.limbs.bearer(second)} ${valueText(second.mean, unit)}).`;
}

/** A met index while a limb is below its own earlier value. */
function overstatesCaution(comparison: Comparison, input: CriteriaInput, settings: Settings) {
  const mark = 100 * settings.overstatesFraction;
  const below = [comparison.first, comparison.second].flatMap((side) => {
    const reference =
      side.side === undefined ? undefined : latestReference(input.references, comparison, side.side, comparison.unit);
    if (reference === undefined || side.mean === undefined) return [];
    if (!(side.mean < settings.overstatesFraction * reference.value)) return [];
    const percent = formatPercent((100 * side.mean) / reference.value, [mark]);
    return [
      `the ${side.side} limb is at ${percent} of its ${reference.origin} value (${valueText(side.mean, comparison.unit)} of ${valueText(reference.value, comparison.unit)})`,
    ];
  });
  return below.length === 0 ? "" : `Symmetry overstates recovery: ${below.join("; ")}.`;
}

function moreTrials(criterion: Symmetry, comparison: Comparison, input: CriteriaInput, settings: Settings): string {
  if (!spreadIsKnown(comparison)) {
    return "With one trial the spread is unknown: whether more would settle this cannot be said.";
  }
  const paired = criterion.legs === "both";
  const allowed = trialsAllowed(comparison, paired ? ["both"] : ["left", "right"], input, settings);
  const settles = (extra: number): boolean => {
    const moments = indexMoments(comparison, trialStatisticOf(settings), extra);
    const { limits: ofTrials, ratio } = ratioInterval(moments, settings.statusConfidence);
    if (ofTrials === undefined) return false;
    const limits = widenedByPlates(ofTrials, ratio, comparison.plateShare, settings.statusConfidence);
    const percent = { low: 100 * limits.low, high: 100 * limits.high };
    return statusOf(percent, criterion.atLeastPercent) !== "too-close-to-call";
  };
  return moreTrialsSentence(allowed, paired ? "on two legs" : "a side", settles, settings);
}

/** One symmetry criterion against the comparison it asks for; the gate is open. */
export function evaluateSymmetry(criterion: Symmetry, input: CriteriaInput, settings: Settings): CriterionResult {
  const plain = { criterion, moreTrials: "", caution: "" };
  if (input.involved === "both") {
    const reason = "Both knees are involved: no symmetry status, only each limb's own earlier values.";
    return { ...plain, status: "not-applicable", reason };
  }
  if (input.involved === "none") {
    return {
      ...plain,
      status: "not-applicable",
      reason: "Nobody is injured: left and right are compared in numbers only.",
    };
  }
  const comparison = comparisonOf(criterion, input.comparisons);
  const reason = obstacles(criterion, comparison, input.comparisons, settings);
  if (comparison?.index === undefined || reason !== "") return { ...plain, status: "not-measured", reason };

  const marks = [criterion.atLeastPercent, settings.indexHighPercent];
  const interval = comparison.intervals.find((each) => each.confidence === settings.statusConfidence);
  const threshold = percentThreshold(criterion.atLeastPercent, [settings.indexHighPercent]);
  const decided = decideStatus("index", comparison.index, interval, comparison.intervalNote, threshold);
  const high = highIndexCaution(comparison, comparison.index, marks, settings);
  const leansMet = decided.status === "met" || decided.lean === "met";
  const overstates = leansMet ? overstatesCaution(comparison, input, settings) : "";
  const single = comparison.intervalFrom === "measurement uncertainty" ? comparison.intervalNote : "";
  return {
    criterion,
    ...decided,
    reason: sentences(decided.reason, boxWords(criterion, comparison, input.comparisons)),
    ...(high === "" ? {} : { qualifier: "the comparison limb is lower, look at both" }),
    moreTrials: decided.status === "too-close-to-call" ? moreTrials(criterion, comparison, input, settings) : "",
    caution: sentences(
      high,
      overstates,
      ...ofComparisonLimb(input).map(comparisonLimbCaution),
      single,
      criterion.note === undefined ? "" : asSentence(criterion.note),
    ),
  };
}
