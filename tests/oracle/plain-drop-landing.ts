import type { Settings } from "../../core/settings/settings.ts";
import { contactThreshold, emptyRuns, touchdownAfter } from "./plain-contacts.ts";
import { sumOf } from "./plain-curve.ts";
import { landingMeasures, limbLandingShare, timeToStabilisation } from "./plain-landing.ts";
import { firstRiseThroughZero, motionQuietBetween, velocityAt } from "./plain-motion.ts";
import { quietRuns } from "./plain-quiet.ts";
import {
  limbsOf,
  type PlainEvent,
  type PlainMeasure,
  type PlainResult,
  type PlainTrial,
  withBodySizes,
  zeroedPlates,
} from "./plain-values.ts";
import { weighingSecond } from "./plain-weighing.ts";

/** A drop landing after METHODS alone: empty, landing and quiet standing at the end. */
export function plainDropLanding(trial: PlainTrial, settings: Settings): PlainResult {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const empty = emptyRuns(whole, settings).at(-1)!;
  const after = weighingSecond(
    whole,
    quietRuns(whole, empty.last + 1, whole.samples.length - 1, settings),
    settings,
    "after the movement",
  )!;
  const weight = after.mean;
  const mass = weight / gravity;
  // METHODS counts thresholds from the middle half of the flight and leaves open what stands for it where nobody jumped:
  // here the empty plate before the landing, as far back as a flight can last.
  const longest = Math.round(settings.flightMaximumSeconds * whole.rateHz);
  const fall = { first: Math.max(empty.first, empty.last + 1 - longest), last: empty.last };
  const threshold = contactThreshold(whole, fall, settings);
  const touchdown = touchdownAfter(whole, empty, threshold, weight, weight, settings)!;
  const motion = motionQuietBetween(whole, weight, mass, after.from, after.to);
  const landingEnd = firstRiseThroughZero(motion, touchdown)!;
  const events: PlainEvent[] = [
    { name: "touchdown", contactIndex: 1, time: touchdown },
    { name: "landingEnd", time: landingEnd },
  ];
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures: PlainMeasure[] = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("dropHeightEffective", velocityAt(motion, touchdown) ** 2 / (2 * gravity)),
    ...landingMeasures(whole, side, touchdown, landingEnd, weight, settings),
  ];
  const stable = timeToStabilisation(whole, touchdown, weight, settings);
  if (stable !== undefined) measures.push(of("timeToStabilisation", stable));
  const touchdowns = new Map<string, number>();
  for (const limb of limbsOf(plates, side)) {
    const limbThreshold = contactThreshold(limb.force, fall, settings);
    const time = touchdownAfter(limb.force, empty, limbThreshold, weight, weight / 4, settings)!;
    touchdowns.set(limb.side, time);
    events.push({ name: "touchdown", side: limb.side, contactIndex: 1, time });
    measures.push(...landingMeasures(limb.force, limb.side, time, landingEnd, weight * limbLandingShare, settings));
  }
  const left = touchdowns.get("left");
  const right = touchdowns.get("right");
  if (left !== undefined && right !== undefined) measures.push(of("limbTouchdownDifference", right - left));
  return { events, measures: withBodySizes(measures, weight, mass) };
}
