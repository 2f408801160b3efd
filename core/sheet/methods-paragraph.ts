import type { EventName } from "../events/event.ts";
import { eventLabel } from "../events/event.ts";
import { percentDigits } from "../format-number.ts";
import { countOf, listInWords, sentences } from "../plain-words.ts";
import type { SessionResult, TrialResult } from "../result.ts";
import { type Settings, settingsHash } from "../settings.ts";
import { startsFromBox } from "../sides/box-height.ts";
import type { Comparison } from "../sides/comparison.ts";
import { engineVersion } from "../version.ts";
import { type MethodReference, methodReferences } from "./method-references.ts";
import { isUsed } from "./sheet-trials.ts";

/**
 * How the numbers of a session were made, in one paragraph: written from the settings and from what the trials used
 * actually contain, so that it never claims a step that did not happen. Ends with the publications it names.
 */
export function methodsParagraph(session: SessionResult, settings: Settings): string {
  const trials = session.trials.filter((trial) => trial.status !== "refused");
  const used = session.trials.filter(isUsed);
  const cited = new Set<MethodReference>();
  const cite = (reference: MethodReference) => {
    cited.add(reference);
    return reference.short;
  };
  const text = sentences(
    ...recordingSentences(trials, settings),
    ...weighingSentences(trials, session, settings, cite),
    ...eventSentences(trials, settings, cite),
    ...heightSentences(trials, cite),
    ...sidesSentences(session, used, settings, cite),
    `Made with Counterpoise ${engineVersion}, settings ${settingsHash(settings).slice(0, 12)}, criteria set “${session.criteriaSet.name}” version ${session.criteriaSet.version}.`,
  );
  const list = [...cited].map((reference) => reference.full);
  return list.length === 0 ? text : `${text} References: ${list.join("; ")}.`;
}

type Cite = (reference: MethodReference) => string;

function recordingSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  if (trials.length === 0) return ["No trial was analysed."];
  const rates = [...new Set(trials.flatMap((trial) => trial.rate ?? []))].sort((a, b) => a - b);
  const plates = [...new Set(trials.map((trial) => trial.plates.length))].sort((a, b) => a - b);
  const words = plates.map((count) => (count === 1 ? "one" : count === 2 ? "two" : String(count)));
  const filtered = hasMeasure(trials, "timeToStabilisation");
  return [
    `Vertical ground reaction force of ${countOf(trials.length, "trial")} was recorded at ${listInWords(rates.map(String))} Hz on ${words.join(" or ")} ${plates.at(-1) === 1 ? "plate" : "plates"}.`,
    filtered
      ? `No filter was applied to weight, impulses, heights and peaks; the time to stabilisation alone reads force low-passed at ${settings.stabilisationFilterHz} Hz.`
      : "No filter was applied: every number comes from unfiltered force.",
  ];
}

function weighingSentences(
  trials: readonly TrialResult[],
  session: SessionResult,
  settings: Settings,
  cite: Cite,
): readonly string[] {
  const from = (source: NonNullable<TrialResult["weight"]>["from"]) =>
    trials.filter((trial) => trial.weight?.from === source);
  const standing = from("quiet standing before the jump");
  const balanced = from("quiet standing before and after the jump");
  const pooled = from("pooled over the session");
  const entered = from("entered mass");
  const short = standing.flatMap((trial) => {
    const seconds = windowSeconds(trial);
    return seconds !== undefined && seconds < settings.weighingSeconds - 1 / (trial.rate ?? 1) ? [seconds] : [];
  });
  const { massKg } = session.description;
  const gravity = session.gravity ?? session.description.gravity ?? settings.gravity;
  return [
    standing.length === 0
      ? ""
      : `Body weight is the mean force over the steadiest ${settings.weighingSeconds} s of quiet standing before the jump (${cite(methodReferences.owen)}).`,
    short.length === 0
      ? ""
      : `In ${countOf(short.length, "trial")} quiet standing was shorter (${Math.min(...short).toFixed(2)} s at the least) and was used with its larger uncertainty.`,
    balanced.length === 0
      ? ""
      : `In ${countOf(balanced.length, "trial")} with quiet standing before and after the jump, body weight is the change of the mean impulse between the two windows over the time between them, where that is the surer estimate.`,
    pooled.length === 0 ? "" : `In ${countOf(pooled.length, "trial")} the weight pooled over the session was used.`,
    entered.length === 0
      ? ""
      : `In ${countOf(entered.length, "trial")} weight follows from the entered mass${massKg === undefined ? "" : ` of ${massKg} kg`}.`,
    standing.length + balanced.length + pooled.length + entered.length === 0 ? "" : `Gravity is ${gravity} m/s².`,
  ];
}

function windowSeconds({ weight, rate }: TrialResult): number | undefined {
  return weight?.window === undefined || rate === undefined
    ? undefined
    : (weight.window.end - weight.window.start) / rate;
}

function eventSentences(trials: readonly TrialResult[], settings: Settings, cite: Cite): readonly string[] {
  const moved = trials.filter((trial) => trial.events.some((event) => event.from === "edited"));
  const names = new Set(
    moved.flatMap((trial) => trial.events.filter((each) => each.from === "edited").map((each) => each.name)),
  );
  return [
    hasEvent(trials, "onset")
      ? `Onset is searched backwards from the least force of the unweighting: the last instant at which force is within the larger of ${settings.onsetSd} standard deviations of the weighing and ${percentDigits(100 * settings.onsetWeightFraction)} % of body weight, minus ${milliseconds(settings.onsetBackSeconds)} ms (band and shift as in ${cite(methodReferences.owen)}).`
      : "",
    hasEvent(trials, "takeoff")
      ? `Take-off is the first fall of force below the level of the empty plate plus the larger of ${settings.contactSd} of its standard deviations and ${settings.contactMinimumNewtons} N that holds for ${milliseconds(settings.contactHoldSeconds)} ms; touchdown mirrors it. ${carriedSentence(trials, settings)}`
      : "",
    hasEvent(trials, "lowestPosition")
      ? `Braking (eccentric) runs from the greatest downward velocity to the lowest position, propulsion (concentric) from there to take-off (names as in ${cite(methodReferences.mcmahon)}).`
      : "",
    moved.length === 0
      ? ""
      : `Events were moved by hand in ${countOf(moved.length, "trial")} (${listInWords([...names].map(eventLabel))}).`,
  ];
}

function carriedSentence(trials: readonly TrialResult[], settings: Settings): string {
  const carried = trials.filter((trial) => (trial.rate ?? 0) >= settings.contactCarryRateHz).length;
  if (carried === 0 || settings.contactCarrySeconds === 0) return "Both stand where force crosses that threshold.";
  return `From there both are carried outwards along the flank of the force to the empty level, by ${milliseconds(settings.contactCarrySeconds)} ms at most.`;
}

function heightSentences(trials: readonly TrialResult[], cite: Cite): readonly string[] {
  const impulse = hasMeasure(trials, "jumpHeightImpulse");
  const flight = hasMeasure(trials, "jumpHeightFlightTime");
  if (!impulse && !flight) return [];
  const heights = [
    ...(impulse ? ["by impulse is the squared velocity at take-off over twice gravity"] : []),
    ...(flight ? ["by flight time is gravity times the squared flight time over eight"] : []),
  ];
  return [
    impulse ? "Velocity is the exact integral of net force between the samples over mass." : "",
    `Jump height ${heights.join(", ")} (${cite(methodReferences.linthorne)}).`,
    hasMeasure(trials, "reactiveStrengthIndex")
      ? "The reactive strength index is jump height by flight time over contact time, in metres a second."
      : "",
    "Values behind ± are standard uncertainties (k = 1) from weighing, noise and the placement of events.",
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
  const exclusion =
    excluded === 0
      ? ""
      : `${countOf(excluded, "trial")} excluded by a person ${excluded === 1 ? "is" : "are"} not used.`;
  const [one] = comparisons;
  if (one === undefined || used.length === 0) return [exclusion];
  const statistic = `The ${settings.trialStatistic} of the trials stands for a side.`;
  if (one.basis === "values-only") return [exclusion, statistic, "Both knees are involved, so no index is formed."];
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
    statistic,
    ...dropSentences(comparisons),
    `The index is 100 × ${index}; gross impulses are compared within two-leg jumps only, heights between single-leg trials.`,
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

function hasMeasure(trials: readonly TrialResult[], id: string): boolean {
  return trials.some((trial) => trial.measures.some((measure) => measure.id === id));
}

function hasEvent(trials: readonly TrialResult[], name: EventName): boolean {
  return trials.some((trial) => trial.events.some((event) => event.name === name));
}

function milliseconds(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e3;
}
