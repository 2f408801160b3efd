import { percentDigits } from "../ground/format-number.ts";
import { countOf, listInWords, sentences } from "../ground/plain-words.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import { engineVersion } from "../ground/version.ts";
import { countsInMeans, isHeld } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { type Settings, settingsHash } from "../settings/settings.ts";
import type { Comparison } from "../sides/comparison.ts";
import { english } from "../words/english.ts";
import { type MethodReference, methodReferences } from "./method-references.ts";
import { eventSentences, hasMeasure, testSentences } from "./methods-of-tests.ts";
import { type Cite, weighingSentences } from "./methods-of-weighing.ts";

/**
 * How the numbers of a session were made, in one paragraph: written from the settings and from what the trials used
 * actually contain, so that it never claims a step that did not happen. Ends with the publications it names.
 */
export function methodsParagraph(session: SessionResult, settings: Settings): string {
  const trials = session.trials.filter((trial) => trial.status !== "refused");
  const used = session.trials.filter(countsInMeans);
  const cited = new Set<MethodReference>();
  const cite = (reference: MethodReference) => {
    cited.add(reference);
    return reference.short;
  };
  const text = sentences(
    ...recordingSentences(trials, settings),
    ...weighingSentences(trials, session, settings, cite),
    ...eventSentences(trials, settings, cite),
    movedSentence(trials),
    ...heightSentences(trials, cite),
    ...testSentences(trials, settings),
    trials.some((trial) => trial.measures.some((each) => each.uncertainty !== undefined))
      ? "Values behind ± are standard uncertainties (k = 1) from weighing, noise and the placement of events."
      : "",
    ...sidesSentences(session, used, settings, cite),
    `Made with Counterpoise ${engineVersion}, settings ${settingsHash(settings).slice(0, 12)}, criteria set “${session.criteriaSet.name}” version ${session.criteriaSet.version}.`,
  );
  const list = [...cited].map((reference) => reference.full);
  return list.length === 0 ? text : `${text} References: ${list.join("; ")}.`;
}

function recordingSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  if (trials.length === 0) return ["No trial was analysed."];
  const rates = [...new Set(trials.flatMap((trial) => trial.rate ?? []))].sort((a, b) => a - b);
  const plates = [...new Set(trials.map((trial) => trial.plates.length))].sort((a, b) => a - b);
  const words = plates.map((count) => (count === 1 ? "one" : count === 2 ? "two" : String(count)));
  const filtered = hasMeasure(trials, "timeToStabilisation");
  const zeroed = trials.filter((trial) => trial.plates.some((plate) => plate.zeroNewtons !== undefined)).length;
  return [
    `Vertical ground reaction force of ${countOf(trials.length, "trial")} was recorded at ${listInWords(rates.map(String))} Hz on ${words.join(" or ")} ${plates.at(-1) === 1 ? "plate" : "plates"}.`,
    filtered
      ? `No filter was applied to weight, impulses, heights and peaks; the time to stabilisation alone reads force low-passed at ${settings.stabilisationFilterHz} Hz.`
      : "No filter was applied: every number comes from unfiltered force.",
    zeroed === 0 ? "" : `What the empty plates read was taken off in ${countOf(zeroed, "trial")}.`,
  ];
}

/** Which events a person has moved. */
function movedSentence(trials: readonly TrialResult[]): string {
  const moved = trials.filter((trial) => trial.events.some((event) => event.from === "edited"));
  const names = new Set(
    moved.flatMap((trial) => trial.events.filter((each) => each.from === "edited").map((each) => each.name)),
  );
  return moved.length === 0
    ? ""
    : `Events were moved by hand in ${countOf(moved.length, "trial")} (${listInWords([...names].map(english.events.label))}).`;
}

function heightSentences(trials: readonly TrialResult[], cite: Cite): readonly string[] {
  const impulse = hasMeasure(trials, "jumpHeightImpulse");
  const flight = hasMeasure(trials, "jumpHeightFlightTime");
  const velocity = impulse || hasMeasure(trials, "dropHeightEffective");
  const velocitySentences = velocity
    ? ["Velocity is the exact integral of net force between the samples over mass."]
    : [];
  if (!impulse && !flight) return velocitySentences;
  const heights = [
    ...(impulse ? ["by impulse is the squared velocity at take-off over twice gravity"] : []),
    ...(flight ? ["by flight time is gravity times the squared flight time over eight"] : []),
  ];
  return [
    ...velocitySentences,
    `Jump height ${heights.join(", ")} (${cite(methodReferences.linthorne)}).`,
    hasMeasure(trials, "reactiveStrengthIndex")
      ? "The reactive strength index is jump height by flight time over contact time, in metres a second."
      : "",
  ];
}

function sidesSentences(
  session: SessionResult,
  used: readonly TrialResult[],
  settings: Settings,
  cite: Cite,
): readonly string[] {
  const { comparisons, criteria } = session;
  const excluded = session.trials.filter((trial) => trial.excluded !== undefined && trial.status !== "refused").length;
  const practice = session.trials.filter((trial) => trial.practice === true && trial.excluded === undefined).length;
  const exclusion = sentences(
    excluded === 0
      ? ""
      : `${countOf(excluded, "trial")} excluded by a person ${excluded === 1 ? "is" : "are"} not used.`,
    practice === 0
      ? ""
      : `${countOf(practice, "practice jump")} ${practice === 1 ? "counts as landing" : "count as landings"} only.`,
  );
  const held = session.trials.filter(isHeld).length;
  const holding =
    held === 0
      ? ""
      : `${countOf(held, "trial")} whose weight differs from the session's ${held === 1 ? "is" : "are"} not used until a person keeps ${held === 1 ? "it" : "them"}.`;
  const inDoubt = comparisons.some((each) => each.basis === "plates")
    ? "Where which foot stood on which plate is unproved or contradicted, values are those of the plates and no index is formed."
    : "";
  const one = comparisons.find((each) => each.basis !== "plates");
  if (used.length === 0) return [exclusion, holding];
  if (one === undefined) return [exclusion, holding, inDoubt];
  const statistic = `The ${settings.trialStatistic} of the trials stands for a side.`;
  if (one.basis === "values-only")
    return [exclusion, holding, statistic, "Both knees are involved, so no index is formed.", inDoubt];
  const index = one.basis === "left-right" ? "left over right" : "the involved over the uninvolved side";
  const sources = new Set(comparisons.map((each) => each.intervalFrom));
  const how = [
    ...(sources.has("paired trials") ? ["paired within two-leg trials"] : []),
    ...(sources.has("independent trials")
      ? ["with Welch–Satterthwaite degrees of freedom between single-leg trials"]
      : []),
    ...(sources.has("measurement uncertainty")
      ? ["from measurement uncertainty alone where a side has one trial"]
      : []),
  ];
  const levels = [...new Set([settings.statusConfidence, settings.drawnConfidence])].map(
    (each) => `${percentDigits(100 * each)} %`,
  );
  const decided = criteria.filter((each) => ["met", "not-met", "too-close-to-call"].includes(each.status));
  return [
    exclusion,
    holding,
    statistic,
    ...dropSentences(comparisons),
    `The index is 100 × ${index}; gross impulses are compared within two-leg jumps only, heights between single-leg trials.`,
    inDoubt,
    how.length === 0
      ? ""
      : `Its ${listInWords(levels)} intervals are those of a ratio (${cite(methodReferences.fieller)}), ${listInWords(how)}; change from day to day is not in them.`,
    decided.some((each) => each.criterion.kind === "absolute")
      ? "Where a criterion asks for a value, its interval is the t interval of the mean of the trials."
      : "",
    decided.length > 0
      ? `With at least ${settings.minimumTrialsPerSide} trials a side, a criterion is met where the whole ${levels[0]} interval is at or above its threshold, not met where it is wholly below, else too close to call.`
      : "",
  ];
}

/** What is particular to sides in tests that start from a box. */
function dropSentences(comparisons: readonly Comparison[]): readonly string[] {
  return [
    comparisons.some((each) => startsFromBox(each.test)) ? "Trials from different box heights are never mixed." : "",
    comparisons.some((each) => each.leads !== undefined)
      ? "In two-leg trials off a box a side is the mean of its means with the left and with the right leg leading; their spread is pooled within each lead, with two degrees of freedom fewer than trials."
      : "",
  ];
}
