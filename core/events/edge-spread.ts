import type { Settings } from "../settings.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { contactThreshold, type EmptyLevel, emptyLevel } from "./contact-edge.ts";
import type { DetectionInput } from "./detection.ts";
import { type EdgeLine, edgeLine } from "./edge-line.ts";
import type { contactKeys, EdgeSpreads, JumpMotion, LimbContact } from "./jump-events.ts";

/**
 * How uncertain each contact event is, samples (k = 1), read from its own flank: what plate noise leaves in the line that
 * carries it, how far that line and the event lie apart (it is carried outwards only, by 1.5 ms at most, and not at all
 * at low rates), a flank that starts gently, and a plate that rings across the threshold. All vanish on a quiet plate
 * with straight flanks that hold two samples.
 */
export function withSpreads(jump: JumpMotion, input: DetectionInput): JumpMotion {
  const { total, limbs, cut, weight, settings } = input;
  const spread = (signal: ForceSignal, edge: number, direction: 1 | -1, flight: SampleSpan): number =>
    edgeSpread(signal, edge, direction, flight, weight.newtons, settings);
  const spreadsOf = (signal: ForceSignal, edges: Partial<Record<EdgeKey, number>>): EdgeSpreads =>
    Object.fromEntries(
      (["contactTouchdown", "takeoff", "touchdown"] as const).flatMap((key) => {
        const edge = edges[key];
        return edge === undefined ? [] : [[key, spread(signal, edge, key === "takeoff" ? 1 : -1, cut.flight)]];
      }),
    );
  const contacts = jump.contacts.map((contact): LimbContact => {
    const signal = limbs.find((limb) => limb.side === contact.side);
    if (signal === undefined) return contact;
    // Load that passes between the feet bends a limb's own flank, so no line resolves the instant within a sample.
    const own = Object.entries(spreadsOf(signal, contact));
    return {
      ...contact,
      spreads: Object.fromEntries(own.map(([key, each]) => [key, Math.hypot(each, 1 / Math.sqrt(12))])),
    };
  });
  if (jump.hops === undefined) return { ...jump, contacts, spreads: spreadsOf(total, jump.events) };
  // Edges of one bout are varied together, so that one number stands for all of a kind.
  const { contacts: hops } = jump.hops;
  const touchdowns = hops.map((hop) => spread(total, hop.touchdown, -1, cut.flight));
  const takeoffs = hops.flatMap((hop) => (hop.takeoff === undefined ? [] : spread(total, hop.takeoff, 1, cut.flight)));
  return { ...jump, spreads: { touchdown: rootMeanSquare(touchdowns), takeoff: rootMeanSquare(takeoffs) } };
}

/** The flank that tells the slope is this many standard deviations of the empty plate high, at least. */
const slopeDeviations = 20;

type EdgeKey = (typeof contactKeys)[number];

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, each) => sum + each * each, 0) / Math.max(1, values.length));
}

function edgeSpread(
  { force, rateHz }: ForceSignal,
  edge: number,
  direction: 1 | -1,
  flight: SampleSpan,
  weightNewtons: number,
  settings: Settings,
): number {
  const empty = emptyLevel({ force, rateHz }, flight);
  const threshold = contactThreshold(empty, settings);
  const hold = settings.contactHoldSeconds * rateHz;
  const loaded = lastLoaded(force, edge, direction, threshold, Math.ceil(hold));
  if (loaded === undefined) return 0;
  // Over more of the flank than carries the event where the plate is noisy, so that noise does not make the slope.
  const carried = settings.contactCarryWeightFraction * weightNewtons;
  const height = Math.max(carried, slopeDeviations * empty.deviation);
  const top = threshold + height;
  const line = edgeLine(force, loaded, direction, Number.NEGATIVE_INFINITY, top);
  // No flank rises out of the noise: the edge may lie anywhere within the hold.
  if (line === undefined || line.slope <= 0) return hold / Math.sqrt(3);
  const wanted = reach(line, empty);
  const reached = (edge - loaded) * direction;
  const crossing = (force[loaded]! - threshold) / (force[loaded]! - force[loaded + direction]!);
  const most = settings.contactCarrySeconds * rateHz;
  const carry = edgeLine(force, loaded, direction, threshold, threshold + carried) ?? line;
  const isOnLine = reached - crossing > justMoved && reached - crossing < most - justMoved;
  // The slope from the whole flank, the lever from the samples that carried the event.
  const noise = reachNoise(isOnLine ? { ...carry, slope: line.slope } : line, empty);
  const rung = ringSamples(force, loaded + direction, direction, threshold, hold);
  const upper = (direction === 1 ? settings.takeoffShapeSeconds : settings.touchdownShapeSeconds) * rateHz;
  const shape = Math.min(upper, shapeSamples(force, loaded, direction, line, top + 2 * height, empty));
  // Where events are not carried to their line, a sample is all that is known.
  const sampling = rateHz < settings.contactCarryRateHz ? 1 / Math.sqrt(12) : 0;
  return Math.hypot(noise, isOnLine ? 0 : offLine(wanted - reached, settings), shape, rung / Math.sqrt(3), sampling);
}

/** An event this near to where its line was cut off was cut off, samples. */
const justMoved = 1e-6;

/**
 * What keeping an event off its line adds. Where the line ends inside the crossing, as on a flank steeper than the
 * sampling, the event lies beyond the contact and is not corrected (outwards only): that share of the distance which is
 * the root mean square of what it is off. What the limit of carrying withholds the event lies anywhere within:
 * rectangular (JCGM 100:2008, 4.3.7).
 */
function offLine(withheld: number, settings: Settings): number {
  return withheld < 0 ? -withheld * settings.contactBeyondFraction : withheld / Math.sqrt(3);
}

/** Where a line reaches the empty level, samples outwards from the loaded one it counts from. */
function reach(line: EdgeLine, empty: EmptyLevel): number {
  return (line.intercept - empty.newtons) / line.slope;
}

/** What plate noise leaves in that. */
function reachNoise(line: EdgeLine, empty: EmptyLevel): number {
  const lever = Math.sqrt(1 / line.count + (reach(line, empty) + line.meanDistance) ** 2 / line.squares);
  return (empty.deviation / line.slope) * lever;
}

/**
 * How far a flank that starts gently deceives the line that carries the event: how much further outwards that line
 * reaches the empty level than the line through the next part of the flank, as far as twice the noise does not make it.
 * Zero on a straight flank; on one that grows with the square of time nine tenths of the true error.
 */
function shapeSamples(
  force: Float64Array,
  loaded: number,
  direction: 1 | -1,
  line: EdgeLine,
  top: number,
  empty: EmptyLevel,
): number {
  const next = edgeLine(force, loaded - direction * line.count, direction, Number.NEGATIVE_INFINITY, top);
  if (next === undefined || next.slope <= 0) return 0;
  const distance = Math.max(0, reach(line, empty) + line.count - reach(next, empty));
  const noise = 2 * Math.hypot(reachNoise(next, empty), reachNoise(line, empty));
  return Math.sqrt(Math.max(0, distance ** 2 - noise ** 2));
}

/** The loaded sample next to an edge: where force last was at the threshold. */
function lastLoaded(
  force: Float64Array,
  edge: number,
  direction: 1 | -1,
  threshold: number,
  reach: number,
): number | undefined {
  const first = direction === 1 ? Math.floor(edge) : Math.ceil(edge);
  for (let step = 0; step <= reach; step += 1) {
    const value = force[first - direction * step];
    if (value !== undefined && value >= threshold) return first - direction * step;
  }
  return undefined;
}

/** Samples from the first one off the plate to the next that is at the threshold again within the hold; 0 for none. */
function ringSamples(force: Float64Array, first: number, direction: 1 | -1, threshold: number, hold: number): number {
  for (let step = 1; step < hold; step += 1) {
    const value = force[first + direction * step];
    if (value !== undefined && value >= threshold) return step;
  }
  return 0;
}
