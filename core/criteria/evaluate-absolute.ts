import { type Limb, oppositeSide } from "../ground/limb.ts";
import { asSentence, sentences } from "../ground/plain-words.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import { thresholdOf } from "../ground/threshold.ts";
import type { Settings } from "../settings/settings.ts";
import { boxHeights, sameBoxHeight } from "../sides/box-height.ts";
import type { ComparableTrial } from "../sides/comparable-trial.ts";
import { feetOf } from "../sides/plate-columns.ts";
import { standingValue, trialStatisticOf } from "../sides/trial-statistic.ts";
import { english } from "../words/english.ts";
import type { CriteriaInput } from "./criteria-input.ts";
import type { Criterion, CriterionResult } from "./criterion.ts";
import { askedTrials, otherBoxes } from "./criterion-comparison.ts";
import { type Decision, decideStatus, statusOf } from "./decide-status.ts";
import { feetReason } from "./feet-reason.ts";
import { meanInterval } from "./mean-interval.ts";
import { moreTrialsSentence, trialsAllowed } from "./more-trials.ts";

type Absolute = Criterion & { readonly kind: "absolute" };

function valuesOf(criterion: Absolute, trials: readonly ComparableTrial[], limb: Limb): readonly number[] {
  return trials
    .filter((trial) => trial.limb === limb && !trial.excluded)
    .flatMap((trial) => trial.measures.filter((each) => each.id === criterion.measure && each.side === limb))
    .map((each) => each.value);
}

/** Trials from the criterion's box; from the box with most trials, the lower of two alike, where it names none. */
function trialsOfBox(criterion: Absolute, trials: readonly ComparableTrial[]): readonly ComparableTrial[] {
  if (!startsFromBox(criterion.test)) return trials;
  const from = (height: number | undefined) => trials.filter((each) => sameBoxHeight(each.dropHeightMetres, height));
  if (criterion.dropHeightMetres !== undefined) return from(criterion.dropHeightMetres);
  return boxHeights(trials)
    .map(from)
    .reduce((most, each) => (each.length > most.length ? each : most), []);
}

function decide(criterion: Absolute, values: readonly number[], limb: Limb, settings: Settings): Decision {
  const label = english.measures.fullLabel(criterion.measure);
  const measure = label.charAt(0).toLowerCase() + label.slice(1);
  const standing = standingValue(values, trialStatisticOf(settings));
  return decideStatus(
    limb === "both" ? measure : `${measure} of the ${limb} leg`,
    standing,
    values.length < 2 ? undefined : meanInterval(values, standing, settings),
    "From one trial no interval can be made.",
    thresholdOf(criterion),
  );
}

/** Which of several limbs decides: one that is not met before one that is undecided before one that is met. */
const order: readonly Decision["status"][] = ["not-met", "too-close-to-call", "met"];

function weakest(decisions: readonly Decision[]): Decision | undefined {
  return decisions.toSorted((a, b) => order.indexOf(a.status) - order.indexOf(b.status) || a.estimate - b.estimate)[0];
}

/**
 * One criterion that asks for a value: both legs together, or the involved leg with the other shown beside it; where
 * both knees are involved, either leg must reach it. The interval is the t interval of the mean. The gate is open.
 */
export function evaluateAbsolute(criterion: Absolute, input: CriteriaInput, settings: Settings): CriterionResult {
  const plain = { criterion, moreTrials: "", caution: "" };
  const { involved } = input;
  if (involved === "none") {
    const reason = "Nobody is injured: the values are shown, the criterion is about the return after an injury.";
    return { ...plain, status: "not-applicable", reason };
  }
  const limbs: readonly Limb[] =
    criterion.legs === "both" ? ["both"] : involved === "both" ? ["left", "right"] : [involved];
  const ofLegs = input.trials.filter(
    (trial) => trial.test === criterion.test && (trial.limb === "both") === (criterion.legs === "both"),
  );
  const trials = trialsOfBox(criterion, ofLegs);

  // A value of one leg needs to be known for that leg's.
  const doubt = criterion.legs === "both" ? "" : feetReason(feetOf(trials.filter((trial) => !trial.excluded)));
  if (doubt !== "") return { ...plain, status: "not-measured", reason: doubt };

  // Enough trials of every limb that is asked for.
  const found = limbs.map((limb) => ({ limb, values: valuesOf(criterion, trials, limb) }));
  if (found.every(({ values }) => values.length === 0)) {
    const elsewhere = ofLegs.filter((trial) => !trials.includes(trial) && !trial.excluded);
    const reason = sentences(
      `No ${askedTrials(criterion)} that counts has this measure.`,
      otherBoxes(criterion, boxHeights(elsewhere)),
    );
    return { ...plain, status: "not-measured", reason };
  }
  const short = found.filter(({ values }) => values.length < settings.minimumTrialsPerSide);
  if (short.length > 0) {
    const counts = short.map(({ limb, values }) =>
      limb === "both"
        ? `${values.length} of ${settings.minimumTrialsPerSide} two-leg trials`
        : `${limb} ${values.length} of ${settings.minimumTrialsPerSide}`,
    );
    return { ...plain, status: "not-measured", reason: `Too few trials: ${counts.join(", ")}.` };
  }

  // The weakest decides; every limb is said.
  const decisions = found.map(({ limb, values }) => decide(criterion, values, limb, settings));
  const deciding = weakest(decisions);
  if (deciding === undefined) throw new RangeError("An absolute criterion asks for a limb at least.");
  return {
    criterion,
    ...deciding,
    reason: sentences(...decisions.map((each) => each.reason), otherLeg(criterion, limbs, trials, settings)),
    moreTrials: deciding.status === "too-close-to-call" ? moreTrials(criterion, found, input, trials, settings) : "",
    caution: criterion.note === undefined ? "" : asSentence(criterion.note),
  };
}

/** The leg that is not held against the threshold, beside the one that is. */
function otherLeg(
  criterion: Absolute,
  limbs: readonly Limb[],
  trials: readonly ComparableTrial[],
  settings: Settings,
): string {
  const [limb, ...more] = limbs;
  if (limb === undefined || limb === "both" || more.length > 0) return "";
  const other = oppositeSide(limb);
  const values = valuesOf(criterion, trials, other);
  if (values.length === 0) return `The ${other} leg has no value.`;
  return `The ${other} leg: ${thresholdOf(criterion).show(standingValue(values, trialStatisticOf(settings)))}.`;
}

function moreTrials(
  criterion: Absolute,
  found: readonly { readonly limb: Limb; readonly values: readonly number[] }[],
  input: CriteriaInput,
  trials: readonly ComparableTrial[],
  settings: Settings,
): string {
  if (found.some(({ values }) => values.length < 2)) {
    return "With one trial the spread is unknown: whether more would settle this cannot be said.";
  }
  const box = trials.find((trial) => trial.dropHeightMetres !== undefined)?.dropHeightMetres;
  const allowed = trialsAllowed(
    { test: criterion.test, legs: criterion.legs, ...(box === undefined ? {} : { dropHeightMetres: box }) },
    found.map(({ limb }) => limb),
    input,
    settings,
  );
  const [one] = found;
  const what = found.length > 1 ? "a side" : one?.limb === "both" ? "on two legs" : `of the ${one?.limb} leg`;
  const statuses = (extra: number) =>
    found.map(({ values }) => {
      const standing = standingValue(values, trialStatisticOf(settings));
      return statusOf(meanInterval(values, standing, settings, extra), criterion.atLeast);
    });
  const settles = (extra: number) =>
    statuses(extra).includes("not-met") || statuses(extra).every((each) => each === "met");
  return moreTrialsSentence(allowed, what, settles, settings);
}
