import type { JumpMotion } from "../events/jump-events.ts";
import type { Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { MeasureContext, RawMeasure } from "./raw-measure.ts";

/** One hop: a contact and the flight that follows it. */
export interface Hop {
  /** Counted from 1 over the contacts of the bout, the entry jump's own contact left out. */
  readonly contactIndex: number;
  /** s */
  readonly contactTime: number;
  /** s */
  readonly flightTime: number;
  /** By flight time, m. */
  readonly jumpHeightFlightTime: number;
  /** m/s */
  readonly reactiveStrengthIndex: number;
  /** N/m; absent where body weight is unknown. */
  readonly hopStiffness?: number;
}

/**
 * The hops of a bout: every contact that a flight and another contact follow. A last flight so short that it is a
 * bounce ends the bout with the contact before it.
 */
export function hopsOf({ motion, hops }: JumpMotion, settings: Settings): readonly Hop[] {
  if (hops === undefined) return [];
  const { gravity } = motion;
  const { rateHz } = motion.signal;
  const massKg = motion.weightNewtons / gravity;
  const all = hops.contacts.flatMap((contact, index): Hop[] => {
    const next = hops.contacts[index + 1];
    if (contact.takeoff === undefined || next === undefined) return [];
    const contactTime = (contact.takeoff - contact.touchdown) / rateHz;
    const flightTime = (next.touchdown - contact.takeoff) / rateHz;
    const jumpHeightFlightTime = (gravity * flightTime * flightTime) / 8;
    return [
      {
        contactIndex: index + 1,
        contactTime,
        flightTime,
        jumpHeightFlightTime,
        reactiveStrengthIndex: jumpHeightFlightTime / contactTime,
        ...(Number.isNaN(massKg) ? {} : { hopStiffness: stiffnessOf(massKg, contactTime, flightTime) }),
      },
    ];
  });
  const flights = all.map((hop) => hop.flightTime).sort((a, b) => a - b);
  const usual = flights[flights.length >> 1] ?? 0;
  const bounces = (all.at(-1)?.flightTime ?? 0) < settings.bounceFraction * usual;
  return bounces ? all.slice(0, -1) : all;
}

/**
 * Vertical stiffness from contact and flight time for a half-sine force (Dalleau et al. 2004; the same as Morin et al.
 * 2005 in hopping).
 */
function stiffnessOf(massKg: number, contactTime: number, flightTime: number): number {
  const period = flightTime + contactTime;
  return (massKg * Math.PI * period) / (contactTime * contactTime * (period / Math.PI - contactTime / 4));
}

/**
 * Contact indices of the hops that stand for the bout (METHODS §6): the best by reactive strength index, on two legs
 * among contacts that are not slow.
 */
export function bestHops(hops: readonly Hop[], limb: Limb, settings: Settings): readonly number[] {
  const quick = limb === "both" ? hops.filter((hop) => hop.contactTime < settings.slowContactSeconds) : hops;
  return [...quick]
    .sort((a, b) => b.reactiveStrengthIndex - a.reactiveStrengthIndex)
    .slice(0, settings.bestHops)
    .map((hop) => hop.contactIndex);
}

/** Summaries of repeated hops: means over the hops that stand for the bout, and how many there are. */
export function measureHops(context: MeasureContext, settings: Settings): RawMeasure[] {
  const { jump, limb: side, usedHops = [] } = context;
  if (jump.hops === undefined) return [];
  const hops = hopsOf(jump, settings);
  const used = hops.filter((hop) => usedHops.includes(hop.contactIndex));
  const stiffness = (hop: Hop): number => hop.hopStiffness ?? Number.NaN;
  const mean = (value: (hop: Hop) => number): number => used.reduce((sum, hop) => sum + value(hop), 0) / used.length;
  return [
    { id: "hopsFound", side, value: hops.length, noise: 0 },
    { id: "hopsUsed", side, value: used.length, noise: 0 },
    ...(used.length === 0
      ? []
      : [
          {
            id: "reactiveStrengthIndexBestFive" as const,
            side,
            value: mean((hop) => hop.reactiveStrengthIndex),
            noise: choiceDoubt(context, hops, (hop) => hop.reactiveStrengthIndex, settings),
          },
          {
            id: "hopStiffness" as const,
            side,
            value: mean(stiffness),
            noise: choiceDoubt(context, hops, stiffness, settings),
          },
        ]),
  ];
}

/**
 * What the choice of the best hops leaves in their mean: a hop that was left out may be a better one than one that was
 * used, where their indices, or a contact time and the limit of a slow one, differ by no more than their edges are
 * uncertain. Each such exchange moves the mean by the difference of the two over the number of hops, so that the mean
 * lies anywhere within it (rectangular, JCGM 100:2008, 4.3.7). The hops stay the same while other inputs are varied.
 */
export function choiceDoubt(
  { jump, limb, usedHops = [] }: Pick<MeasureContext, "jump" | "limb" | "usedHops">,
  hops: readonly Hop[],
  value: (hop: Hop) => number,
  settings: Settings,
): number {
  const { touchdown = 0, takeoff = 0 } = jump.spreads ?? {};
  const edges = Math.hypot(touchdown, takeoff) / jump.motion.signal.rateHz;
  const indexDoubt = (hop: Hop): number =>
    hop.reactiveStrengthIndex * Math.hypot((2 * edges) / hop.flightTime, edges / hop.contactTime);
  const nearLimit = (hop: Hop): boolean =>
    limb === "both" && Math.abs(hop.contactTime - settings.slowContactSeconds) <= settings.hopOrderDeviations * edges;
  const isUsed = (hop: Hop): boolean => usedHops.includes(hop.contactIndex);
  const used = hops.filter(isUsed);
  const left = hops.filter(
    (hop) => !isUsed(hop) && (limb !== "both" || hop.contactTime < settings.slowContactSeconds || nearLimit(hop)),
  );
  const exchanges = left.map((out) => {
    const apart = used.map((own) => {
      const difference = own.reactiveStrengthIndex - out.reactiveStrengthIndex;
      const doubtful = difference <= settings.hopOrderDeviations * Math.hypot(indexDoubt(own), indexDoubt(out));
      return doubtful || nearLimit(own) ? Math.abs(value(own) - value(out)) : 0;
    });
    return Math.max(0, ...apart);
  });
  // No more hops are exchanged than were used.
  const most = exchanges.sort((a, b) => b - a).slice(0, used.length);
  return Math.hypot(...most) / Math.max(1, used.length) / Math.sqrt(3);
}
