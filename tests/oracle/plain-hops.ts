import type { Settings } from "../../core/settings.ts";
import { contactThreshold, flightRuns, takeoffBefore, touchdownAfter } from "./plain-contacts.ts";
import { sumOf } from "./plain-curve.ts";
import { firstRiseThroughZero, motionQuietBetween } from "./plain-motion.ts";
import { type PlainEvent, type PlainMeasure, type PlainResult, type PlainTrial, zeroedPlates } from "./plain-values.ts";
import { steadiestWindow } from "./plain-weighing.ts";

/** METHODS §6: contacts of a two-leg test count below 250 ms, and the best five of them. */
const slowContactSeconds = 0.25;
const bestHops = 5;

/** Repeated hops after METHODS alone: standing, an entry jump, contacts each followed by a flight, a last landing. */
export function plainRepeatedHops(trial: PlainTrial, settings: Settings): PlainResult & { hops: readonly PlainHop[] } {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const flights = flightRuns(whole, settings);
  const last = flights.at(-1)!;
  const after = steadiestWindow(whole, last.last + 1, whole.samples.length - 1, settings)!;
  const weight = after.mean;
  const mass = weight / gravity;
  const edges = flights.map((flight) => {
    const threshold = contactThreshold(whole, flight, settings);
    return {
      takeoff: takeoffBefore(whole, flight, threshold, weight, weight, settings)!,
      touchdown: touchdownAfter(whole, flight, threshold, weight, weight, settings)!,
    };
  });
  const quiet = motionQuietBetween(whole, weight, mass, after.from, after.to);
  const events: PlainEvent[] = [];
  const hops: PlainHop[] = [];
  for (let index = 0; index + 1 < edges.length; index++) {
    const from = edges[index]!.touchdown;
    const to = edges[index + 1]!.takeoff;
    const flightTime = edges[index + 1]!.touchdown - to;
    const contactTime = to - from;
    const height = (gravity * flightTime ** 2) / 8;
    const contactIndex = index + 1;
    hops.push({
      contactIndex,
      contactTime,
      flightTime,
      jumpHeightFlightTime: height,
      reactiveStrengthIndex: height / contactTime,
      hopStiffness: stiffnessFromTimes(mass, contactTime, flightTime),
    });
    events.push(
      { name: "touchdown", contactIndex, time: from },
      { name: "lowestPosition", contactIndex, time: firstRiseThroughZero(quiet, from)! },
      { name: "takeoff", contactIndex, time: to },
    );
  }
  const lastTouchdown = edges.at(-1)!.touchdown;
  events.push({ name: "touchdown", contactIndex: edges.length, time: lastTouchdown });

  const eligible = side === "both" ? hops.filter((hop) => hop.contactTime < slowContactSeconds) : [...hops];
  eligible.sort((a, b) => b.reactiveStrengthIndex - a.reactiveStrengthIndex);
  const used = eligible.slice(0, bestHops);
  const meanOver = (pick: (hop: PlainHop) => number): number =>
    used.reduce((sum, hop) => sum + pick(hop), 0) / used.length;
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("hopsFound", hops.length),
    of("hopsUsed", used.length),
    of(
      "reactiveStrengthIndexBestFive",
      meanOver((hop) => hop.reactiveStrengthIndex),
    ),
    of(
      "hopStiffness",
      meanOver((hop) => hop.hopStiffness),
    ),
  ];
  return { events, measures, hops };
}

/** One hop: a contact and the flight that follows it. */
export interface PlainHop {
  readonly contactIndex: number;
  readonly contactTime: number;
  readonly flightTime: number;
  readonly jumpHeightFlightTime: number;
  readonly reactiveStrengthIndex: number;
  readonly hopStiffness: number;
}

/** Dalleau et al. 2004 (CHECKS C2, formula from memory), N/m. */
export function stiffnessFromTimes(mass: number, contact: number, flight: number): number {
  return (mass * Math.PI * (flight + contact)) / (contact ** 2 * ((flight + contact) / Math.PI - contact / 4));
}
