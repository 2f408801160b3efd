import { isOfLimb } from "../events/event.ts";
import type { EventName } from "../ground/event-name.ts";
import { percentDigits } from "../ground/format-number.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { countOf, listInWords } from "../ground/plain-words.ts";
import type { CourseFacts } from "../ground/test-course.ts";
import { testFacts } from "../ground/test-kind.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import { methodReferences } from "./method-references.ts";
import type { Cite } from "./methods-of-weighing.ts";

/** How events were found, each sentence only where a trial has such an event. */
export function eventSentences(trials: readonly TrialResult[], settings: Settings, cite: Cite): readonly string[] {
  const onsets = [
    ...(hasEvent(
      where(trials, ({ turn }) => turn === "dip"),
      "onset",
    )
      ? ["the least force of the unweighting"]
      : []),
    ...(hasEvent(where(trials, isHeld), "onset") ? ["the largest force of a squat jump's rise"] : []),
  ];
  const level = `the level of the empty plate plus the larger of ${settings.contactSd} of its standard deviations and ${settings.contactMinimumNewtons} N`;
  const hold = `${milliseconds(settings.contactHoldSeconds)} ms`;
  const takeoff = hasEvent(trials, "takeoff");
  return [
    onsets.length === 0
      ? ""
      : `Onset is searched backwards from ${onsets.join(" or ")}: the last instant at which force is within the larger of ${settings.onsetSd} standard deviations of the weighing and ${percentDigits(100 * settings.onsetWeightFraction)} % of body weight, minus ${milliseconds(settings.onsetBackSeconds)} ms (band and shift as in ${cite(methodReferences.owen)}).`,
    takeoff
      ? `Take-off is the first fall of force below ${level} that holds for ${hold}; touchdown mirrors it. ${carriedSentence(trials, settings)}`
      : "",
    !takeoff && hasEvent(trials, "touchdown")
      ? `Touchdown is the last rise of force above ${level} after ${hold} below it. ${carriedSentence(trials, settings)}`
      : "",
    trials.some((trial) => trial.events.some(isOfLimb))
      ? "In two-leg trials on two plates each limb's contacts are found on its own plate by the same rule."
      : "",
    hasEvent(trials, "endOfUnweighting")
      ? `Braking (eccentric) runs from the greatest downward velocity to the lowest position, propulsion (concentric) from there to take-off (names as in ${cite(methodReferences.mcmahon)}).`
      : "",
  ];
}

function carriedSentence(trials: readonly TrialResult[], settings: Settings): string {
  const both = hasEvent(trials, "takeoff");
  const carried = trials.some((trial) => (trial.rate ?? 0) >= settings.contactCarryRateHz);
  if (!carried || settings.contactCarrySeconds === 0) {
    return both ? "Both stand where force crosses that threshold." : "It stands where force crosses that threshold.";
  }
  return `From there ${both ? "both are" : "it is"} carried outwards along the flank of the force to the empty level, by ${milliseconds(settings.contactCarrySeconds)} ms at most.`;
}

/** What is particular to a test, only where a trial of it is there. */
export function testSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  return [
    ...squatSentences(where(trials, isHeld), settings),
    ...dropSentences(trials),
    ...hopSentences(
      where(trials, ({ flights }) => flights === "many"),
      settings,
    ),
    ...landingSentences(trials, settings),
    ...singleLegSentences(trials, settings),
  ];
}

function squatSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  if (trials.length === 0) return [];
  const fraction = percentDigits(100 * settings.squatDipFraction);
  return [
    `A squat jump starts from a hold, in which velocity is zero, and is propulsion from onset to take-off; a dip of force by more than ${fraction} % of body weight, or of the body by more than ${100 * settings.squatDipMetres} cm, before the rise is reported.`,
  ];
}

function dropSentences(trials: readonly TrialResult[]): readonly string[] {
  const drops = where(trials, ({ start }) => start === "box");
  const jumps = where(drops, ({ flights }) => flights === "one");
  const fromFlight = drops.filter((trial) => trial.findings.some((each) => each.code === "velocity-from-flight"));
  const backwards = drops.length > fromFlight.length;
  return [
    jumps.length === 0
      ? ""
      : "In a drop jump braking runs from the first touchdown to the lowest position, propulsion from there to take-off.",
    backwards ? "Off a box velocity is integrated backwards from quiet standing after the landing." : "",
    fromFlight.length === 0
      ? ""
      : `In ${countOf(fromFlight.length, "trial")}, after which nobody stood still, gravity times half the flight time gives the velocity at take-off.`,
    hasMeasure(drops, "dropHeightEffective")
      ? "The effective drop height is the squared velocity at the first touchdown over twice gravity."
      : "",
  ];
}

function hopSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  if (trials.length === 0) return [];
  const limited = trials.some((trial) => trial.limb === "both");
  const among = limited ? `, on two legs among contacts below ${milliseconds(settings.slowContactSeconds)} ms` : "";
  const hopMeasures = hasMeasure(trials, "hopStiffness");
  return [
    "In repeated hops a hop is a contact and the flight that follows it, without the entry jump and the last contact; its height is gravity times the squared flight time over eight, its reactive strength index that height over contact time.",
    hopMeasures
      ? `Values of a bout are means over the ${settings.bestHops} hops with the largest index${among}; hop stiffness follows from contact and flight time for a force in the shape of a half sine.`
      : "",
  ];
}

function landingSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  const landed = hasMeasure(trials, "peakLandingForce");
  return [
    landed ? "A landing runs from touchdown, of a limb from its own, until velocity is zero again." : "",
    hasMeasure(trials, "loadingRate")
      ? "Its loading rate is the mean slope of force from touchdown to the first peak of at least body weight, of one limb of two half of it."
      : "",
    hasMeasure(trials, "timeToStabilisation")
      ? `The time to stabilisation ends where force stays within ${percentDigits(100 * settings.stabilisationBandFraction)} % of body weight for ${settings.stabilisationSeconds} s.`
      : "",
  ];
}

function singleLegSentences(trials: readonly TrialResult[], settings: Settings): readonly string[] {
  const single = trials.filter((trial) => trial.limb === "left" || trial.limb === "right");
  if (single.length === 0) return [];
  const limbs = [...new Set(single.map((trial) => trial.limb))].sort();
  const watched = single.some((trial) => trial.plates.length > 1);
  return [
    `In single-leg trials (${listInWords(limbs.map(String))}) every value is that of the leg that jumped${watched ? `; more than ${settings.otherFootNewtons} N under the other foot is reported` : ""}.`,
  ];
}

function where(trials: readonly TrialResult[], is: (facts: CourseFacts) => boolean): readonly TrialResult[] {
  return trials.filter(({ test }) => test !== undefined && is(testFacts(test)));
}

function isHeld({ start }: CourseFacts): boolean {
  return start === "hold";
}

/** True where any of the trials has the measure. */
export function hasMeasure(trials: readonly TrialResult[], id: MeasureId): boolean {
  return trials.some((trial) => trial.measures.some((measure) => measure.id === id));
}

function hasEvent(trials: readonly TrialResult[], name: EventName): boolean {
  return trials.some((trial) => trial.events.some((event) => event.name === name));
}

function milliseconds(seconds: number): number {
  return Math.round(seconds * 1e6) / 1e3;
}
