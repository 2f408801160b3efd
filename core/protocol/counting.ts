import type { MeasureId } from "../ground/measures/catalogue.ts";
import { listInWords } from "../ground/plain-words.ts";
import { startsFromBox, type TestKind, testFacts } from "../ground/test-kind.ts";
import { countsInMeans } from "../result/held-trial.ts";
import { ownMeasure } from "../result/trial-bearer.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { boxHeightText, sameBoxHeight } from "../sides/box-height.ts";
import { comparableMeasures } from "../sides/comparable-measures.ts";
import { english } from "../words/english.ts";
import { findingInWords } from "../words/finding-in-words.ts";
import { trialVerdict } from "./trial-verdict.ts";

/** What a person can say of a trial that it needs before its comparison can use it. */
export type NeededAnswer = "box height" | "leading leg" | "feet";

/** Whether a trial counts for what it was made for. */
export interface Counting {
  readonly counts: boolean;
  /** Why it does not, or not yet, or what to look at although it does; empty where there is nothing to say. */
  readonly reason: string;
  /** It counts once these are answered; empty where it counts already, and where no answer would make it count. */
  readonly waitsFor: readonly NeededAnswer[];
}

/**
 * Whether a trial counts: it may enter means (`trialVerdict`), and the comparison its test is for can use it, which
 * takes the box height, on two plates the leading leg, feet that are not in doubt, and the measures of the comparison.
 * The one decision behind progress, watch board, sheet and the lists of what is missing; the comparison of sides uses
 * every trial that counts.
 *
 * A two-leg trial on one plate gives values of the whole body; it counts for those, unless others of its test in the
 * session stand on two plates, because it is in no comparison with them.
 * @param trials every trial of the session
 * @param boxMetres the box of the test of the protocol; absent: any stated box
 */
export function countsFor(trial: TrialResult, trials: readonly TrialResult[], boxMetres?: number): Counting {
  const { counts, reason } = trialVerdict(trial);
  const { test, limb, dropHeightMetres } = trial;
  if (!counts || test === undefined || limb === undefined) return { counts: false, reason, waitsFor: [] };
  if (boxMetres !== undefined && dropHeightMetres !== undefined && !sameBoxHeight(boxMetres, dropHeightMetres)) {
    return { counts: false, reason: `It is from a box of ${boxHeightText(dropHeightMetres)}.`, waitsFor: [] };
  }
  const missing = missingMeasures(trial, test);
  if (missing.length > 0) return { counts: false, reason: whyMissing(trial, missing), waitsFor: [] };
  if (limb === "both" && !onTwoPlates(trial) && trials.some((each) => isLike(each, trial) && onTwoPlates(each))) {
    const why = "It was recorded on one plate, others of this test on two: left and right of it cannot be compared.";
    return { counts: false, reason: why, waitsFor: [] };
  }
  const waitsFor = neededAnswers(trial, test);
  return waitsFor.length === 0
    ? { counts: true, reason, waitsFor }
    : { counts: false, reason: waitingReason(trial, waitsFor), waitsFor };
}

/** True for a two-leg trial with a plate under each foot: left and right of it can be compared. */
export function onTwoPlates({ limb, plates }: TrialResult): boolean {
  return limb === "both" && plates.some((plate) => plate.limb !== "both");
}

function isLike(one: TrialResult, other: TrialResult): boolean {
  return countsInMeans(one) && one.test === other.test && one.limb === other.limb;
}

function neededAnswers(trial: TrialResult, test: TestKind): readonly NeededAnswer[] {
  const compared = onTwoPlates(trial);
  const fromBox = startsFromBox(test);
  return [
    ...(fromBox && trial.dropHeightMetres === undefined ? (["box height"] as const) : []),
    ...(fromBox && compared && trial.leadingLeg === undefined ? (["leading leg"] as const) : []),
    ...(trial.feet === undefined ? [] : (["feet"] as const)),
  ];
}

/** Measures that the comparison needs and the trial has not. While feet are in doubt no side is asked for one. */
function missingMeasures(trial: TrialResult, test: TestKind): readonly MeasureId[] {
  const { limb, measures } = trial;
  const legs = limb === "both" ? "both" : "single";
  const compared = comparableMeasures.filter(
    (each) => each.role === "criterion" && each.legs === legs && each.tests.includes(test),
  );
  const has = (id: MeasureId, side: string | undefined) =>
    measures.some((each) => each.id === id && each.side === side);
  const own =
    compared.length === 0 || legs === "both" ? [testFacts(test).judgedBy] : compared.map((each) => each.measure);
  const sided =
    onTwoPlates(trial) && trial.feet === undefined
      ? compared.filter(({ measure }) => !has(measure, "left") || !has(measure, "right"))
      : [];
  return [...own.filter((id) => ownMeasure(trial, id) === undefined), ...sided.map((each) => each.measure)];
}

function whyMissing({ findings }: TrialResult, missing: readonly MeasureId[]): string {
  const cause = findings.find((each) => each.removes.some((id) => missing.includes(id)));
  if (cause !== undefined) return findingInWords(cause, english).message;
  return `Missing from it: ${missing.map((id) => lowered(english.measures.fullLabel(id))).join("; ")}.`;
}

function lowered(label: string): string {
  return label.charAt(0).toLowerCase() + label.slice(1);
}

function waitingReason({ feet }: TrialResult, waitsFor: readonly NeededAnswer[]): string {
  const words: Readonly<Record<NeededAnswer, string>> = {
    "box height": "the height of the box is not stated",
    "leading leg": "which leg led off the box is not stated",
    feet:
      feet === "contradicted"
        ? "which foot stood on which plate is contradicted"
        : "which foot stood on which plate is not proved",
  };
  return `Not yet: ${listInWords(waitsFor.map((each) => words[each]))}.`;
}
