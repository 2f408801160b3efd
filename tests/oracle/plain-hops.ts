import type { Side } from "../../core/ground/limb.ts";
import type { Settings } from "../../core/settings/settings.ts";
import { contactThreshold, flightRuns, type PlainRun, takeoffBefore, touchdownAfter } from "./plain-contacts.ts";
import { type PlainForce, sumOf } from "./plain-curve.ts";
import { quietRuns } from "./plain-quiet.ts";
import {
  limbsOf,
  type PlainEvent,
  type PlainMeasure,
  type PlainResult,
  type PlainTrial,
  zeroedPlates,
} from "./plain-values.ts";
import { weighingSecond } from "./plain-weighing.ts";

/** A bout: its events and summaries, every hop, and every limb's contact times on two plates. */
export interface PlainBout extends PlainResult {
  readonly hops: readonly PlainHop[];
  readonly limbTimes: readonly PlainLimbTime[];
}

/** Repeated hops after METHODS alone: standing, an entry jump, contacts each followed by a flight, a last landing. */
export function plainRepeatedHops(trial: PlainTrial, settings: Settings): PlainBout {
  const { gravity } = trial;
  const side = trial.limb;
  const plates = zeroedPlates(trial, settings);
  const whole = sumOf(plates.map((plate) => plate.force));
  const flights = flightRuns(whole, settings);
  const last = flights.at(-1)!;
  const after = weighingSecond(
    whole,
    quietRuns(whole, last.last + 1, whole.samples.length - 1, settings),
    settings,
    "after the movement",
  )!;
  const weight = after.mean;
  const mass = weight / gravity;
  const edges = flights.map((flight) => {
    const threshold = contactThreshold(whole, flight, settings);
    return {
      takeoff: takeoffBefore(whole, flight, threshold, weight, weight, settings)!,
      touchdown: touchdownAfter(whole, flight, threshold, weight, weight, settings)!,
    };
  });
  // The entry jump is no hop; its take-off carries no contact number.
  const events: PlainEvent[] = [{ name: "takeoff", time: edges[0]!.takeoff }];
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
    events.push({ name: "touchdown", contactIndex, time: from }, { name: "takeoff", contactIndex, time: to });
  }
  const lastTouchdown = edges.at(-1)!.touchdown;
  events.push({ name: "touchdown", contactIndex: edges.length, time: lastTouchdown });
  const limbs = limbsOf(plates, side).map((limb) => eventsOfLimb(limb, flights, weight, settings));
  for (const own of limbs) events.push(...own);

  const eligible = side === "both" ? hops.filter((hop) => hop.contactTime < settings.slowContactSeconds) : [...hops];
  eligible.sort((a, b) => b.reactiveStrengthIndex - a.reactiveStrengthIndex);
  const used = eligible.slice(0, settings.bestHops);
  const meanOver = (pick: (hop: PlainHop) => number): number =>
    used.reduce((sum, hop) => sum + pick(hop), 0) / used.length;
  const of = (id: string, value: number): PlainMeasure => ({ id, side, value });
  const measures = [
    of("bodyWeight", weight),
    of("bodyMass", mass),
    of("hopsFound", hops.length),
    of("hopsUsed", used.length),
  ];
  if (used.length > 0) {
    const index = meanOver((hop) => hop.reactiveStrengthIndex);
    const stiffness = meanOver((hop) => hop.hopStiffness);
    measures.push(of("reactiveStrengthIndexBestFive", index), of("hopStiffness", stiffness));
  }
  const limbTimes = hops.flatMap(({ contactIndex }) => limbs.map((own) => timeOfContact(own, contactIndex)));
  return { events, measures, hops, limbTimes };
}

/** How long one limb stood on its own plate in one contact, s. */
export interface PlainLimbTime {
  readonly contactIndex: number;
  readonly side: string;
  readonly contactTime: number;
}

function timeOfContact(own: readonly PlainEvent[], contactIndex: number): PlainLimbTime {
  const of = (name: string): PlainEvent =>
    own.find((event) => event.name === name && event.contactIndex === contactIndex)!;
  return { contactIndex, side: own[0]!.side!, contactTime: of("takeoff").time - of("touchdown").time };
}

/** One limb's own events in every contact, by its own threshold and the athlete's weight (METHODS §3). */
function eventsOfLimb(
  { side, force }: { readonly side: Side; readonly force: PlainForce },
  flights: readonly PlainRun[],
  weight: number,
  settings: Settings,
): PlainEvent[] {
  return flights.flatMap((flight, index): PlainEvent[] => {
    const threshold = contactThreshold(force, flight, settings);
    const takeoff = takeoffBefore(force, flight, threshold, weight, weight / 4, settings)!;
    const touchdown = touchdownAfter(force, flight, threshold, weight, weight / 4, settings)!;
    const leaves: PlainEvent = { name: "takeoff", side, time: takeoff };
    return [
      index === 0 ? leaves : { ...leaves, contactIndex: index },
      { name: "touchdown", side, contactIndex: index + 1, time: touchdown },
    ];
  });
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
function stiffnessFromTimes(mass: number, contact: number, flight: number): number {
  return (mass * Math.PI * (flight + contact)) / (contact ** 2 * ((flight + contact) / Math.PI - contact / 4));
}
