import type { Settings } from "../settings.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { contactThreshold, emptyLevel } from "./contact-edge.ts";
import type { DetectionInput } from "./detection.ts";
import { edgeLine } from "./edge-line.ts";
import type { contactKeys, EdgeSpreads, JumpMotion, LimbContact } from "./jump-events.ts";

/**
 * How uncertain each contact event is beyond sampling and shape, samples (k = 1): what plate noise leaves in the line
 * that carries it, how far that line and the event lie apart (it is carried outwards only, by 1.5 ms at most, and not
 * at all at low rates), and a plate that rings across the threshold. All vanish on a quiet plate with steep edges.
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
    return signal === undefined ? contact : { ...contact, spreads: spreadsOf(signal, contact) };
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
  const height = Math.max(settings.contactCarryWeightFraction * weightNewtons, slopeDeviations * empty.deviation);
  const top = threshold + height;
  const line = edgeLine(force, loaded, direction, Number.NEGATIVE_INFINITY, top);
  // No flank rises out of the noise: the edge may lie anywhere within the hold.
  if (line === undefined || line.slope <= 0) return hold / Math.sqrt(3);
  const reached = (edge - loaded) * direction;
  const wanted = (line.intercept - empty.newtons) / line.slope;
  const lever = Math.sqrt(1 / line.count + (wanted + line.meanDistance) ** 2 / line.squares);
  const noise = (empty.deviation / line.slope) * lever;
  // The event lies anywhere up to there: rectangular (JCGM 100:2008, 4.3.7).
  const apart = Math.abs(wanted - reached) / Math.sqrt(3);
  const rung = ringSamples(force, loaded + direction, direction, threshold, hold);
  return Math.hypot(noise, apart, rung / Math.sqrt(3));
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
