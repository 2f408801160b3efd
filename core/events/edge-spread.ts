import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { contactThreshold, type EmptyLevel, emptyLevel } from "./contact-edge.ts";
import type { DetectionInput } from "./detection.ts";
import { type EdgeLine, edgeLine } from "./edge-line.ts";
import { edgeWeight } from "./edge-weight.ts";
import { contactKeys, type EdgeSpreads, type JumpMotion, type LimbContact } from "./jump-events.ts";
import { ringDelay } from "./ring-delay.ts";

/**
 * How uncertain each contact event is, samples (k = 1), read from its own flank: what plate noise leaves in the line that
 * carries it, how far that line and the event lie apart (it is carried outwards only, by 1.5 ms at most, and not at all
 * at low rates), a flank that starts gently, and a plate that rings across the threshold or holds force up as it is
 * released. All vanish on a quiet plate with straight flanks that hold two samples.
 */
export function withSpreads(jump: JumpMotion, input: DetectionInput): JumpMotion {
  const { total, limbs, cut, settings } = input;
  const weightNewtons = edgeWeight(input, settings);
  const spread = (signal: ForceSignal, edge: number, direction: 1 | -1, flight: SampleSpan): number =>
    edgeSpread(signal, edge, direction, flight, weightNewtons, settings);
  const spreadsOf = (signal: ForceSignal, edges: Partial<Record<EdgeKey, number>>): EdgeSpreads =>
    Object.fromEntries(
      contactKeys.flatMap((key) => {
        const edge = edges[key];
        if (edge === undefined) return [];
        const own = spread(signal, edge, key === "takeoff" ? 1 : -1, cut.flight);
        return [
          [key, key === "takeoff" ? Math.hypot(own, ringingUncertainty(signal, edge, edges.touchdown, settings)) : own],
        ];
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
  const { entryTakeoff, contacts: hops } = jump.hops;
  // Each was counted from the empty level of the flight beside it, the first touchdown after a fall from the next one.
  const flights = [cut.flight, ...cut.laterFlights];
  const before = entryTakeoff === undefined ? 1 : 0;
  const beside = (index: number): SampleSpan => flights[Math.max(0, index - before)] ?? cut.flight;
  const touchdowns = hops.map((hop, index) => spread(total, hop.touchdown, -1, beside(index)));
  const takeoffs = hops.flatMap(({ takeoff }, index) =>
    takeoff === undefined
      ? []
      : Math.hypot(
          spread(total, takeoff, 1, beside(index + 1)),
          ringingUncertainty(total, takeoff, hops[index + 1]?.touchdown, settings),
        ),
  );
  return { ...jump, spreads: { touchdown: rootMeanSquare(touchdowns), takeoff: rootMeanSquare(takeoffs) } };
}

/** A take-off lies anywhere within the half period that ringing may hold force up for: rectangular. */
function ringingUncertainty(
  signal: ForceSignal,
  takeoff: number,
  touchdown: number | undefined,
  settings: Settings,
): number {
  if (touchdown === undefined) return 0;
  const flight = { start: Math.ceil(takeoff), end: Math.floor(touchdown) };
  return ringDelay(signal, takeoff, flight, settings) / Math.sqrt(3);
}

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
  const empty = emptyLevel({ force, rateHz }, flight, settings);
  const threshold = contactThreshold(empty, settings);
  const hold = settings.contactHoldSeconds * rateHz;
  const loaded = lastLoaded(force, edge, direction, threshold, Math.ceil(hold));
  if (loaded === undefined) return 0;
  // Over more of the flank than carries the event where the plate is noisy, so that noise does not make the slope.
  const carried = settings.contactCarryWeightFraction * weightNewtons;
  const height = Math.max(carried, settings.edgeSlopeDeviations * empty.deviation);
  const top = threshold + height;
  const line = edgeLine(force, loaded, direction, Number.NEGATIVE_INFINITY, top);
  // No flank rises out of the noise: the edge may lie anywhere within the hold. A nearly flat one says no less: its
  // line reaches the empty level anywhere.
  if (line === undefined || !(line.slope > 0)) return hold / Math.sqrt(3);
  const wanted = reach(line, empty);
  const reached = (edge - loaded) * direction;
  const crossing = (force[loaded]! - threshold) / (force[loaded]! - force[loaded + direction]!);
  const most = settings.contactCarrySeconds * rateHz;
  const carry = edgeLine(force, loaded, direction, threshold, threshold + carried) ?? line;
  const isOnLine = reached - crossing > justMoved && reached - crossing < most - justMoved;
  // The slope from the whole flank, the lever from the samples that carried the event.
  const noise = reachNoise(isOnLine ? { ...carry, slope: line.slope } : line, empty);
  const again = againSamples(force, loaded + direction, direction, threshold, hold);
  const upper = (direction === 1 ? settings.takeoffShapeSeconds : settings.touchdownShapeSeconds) * rateHz;
  const shape = Math.min(upper, shapeSamples(force, loaded, direction, line, top + 2 * height, empty, settings));
  // Where events are not carried to their line, a sample is all that is known.
  const sampling = rateHz < settings.contactCarryRateHz ? 1 / Math.sqrt(12) : 0;
  const first = force[loaded + direction]! - empty.newtons;
  const beside = besideFirstOff(first, isOnLine ? carry : line, reached, crossing, empty, settings);
  const ofLine = isOnLine ? 0 : offLine(wanted - reached, settings);
  const spread = Math.hypot(noise, ofLine, beside, shape, again, sampling);
  return Math.min(spread, hold / Math.sqrt(3));
}

/** An event this near to where its line was cut off was cut off, samples. No setting: rounding of doubles. */
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

/**
 * What the first sample off the plate says against an event, samples. Where it still shows load beyond the event, the
 * flank has a foot that reaches behind that sample. Where it shows less load than the line that carried the event says,
 * the flank begins more steeply than its line, as beneath a plate that rings: the event was carried too far.
 * @param first force of that sample above the empty level, newtons
 */
function besideFirstOff(
  first: number,
  line: EdgeLine,
  reached: number,
  crossing: number,
  empty: EmptyLevel,
  settings: Settings,
): number {
  const doubt = settings.edgeFirstOffDeviations * empty.deviation;
  if (reached < 1) return first > doubt ? 1 - reached + first / line.slope : 0;
  const expectedNewtons = line.intercept - line.slope - empty.newtons;
  const missing = (expectedNewtons - Math.max(0, first) - doubt) / line.slope;
  return Math.min(Math.max(0, missing), Math.max(0, reached - crossing));
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
 * Zero on a straight flank; on one that grows with the square of time nine tenths of the true error. A flank that begins
 * more steeply than it goes on, beyond what noise does to its slopes, as beneath a plate that rings, reaches the empty
 * level nearer than its line by what its bend says, which counts in full.
 */
function shapeSamples(
  force: Float64Array,
  loaded: number,
  direction: 1 | -1,
  line: EdgeLine,
  top: number,
  empty: EmptyLevel,
  settings: Settings,
): number {
  const next = edgeLine(force, loaded - direction * line.count, direction, Number.NEGATIVE_INFINITY, top);
  if (next === undefined) return 0;
  const slopeNoise = empty.deviation * Math.hypot(1 / Math.sqrt(line.squares), 1 / Math.sqrt(next.squares));
  const isBent = line.slope - next.slope > settings.edgeBendDeviations * slopeNoise;
  const bent = isBent ? Math.max(0, reach(line, empty) - steeperReach(line, next, empty)) : 0;
  if (next.slope <= 0) return bent;
  const distance = Math.max(0, reach(line, empty) + line.count - reach(next, empty));
  const noise = 2 * Math.hypot(reachNoise(next, empty), reachNoise(line, empty));
  return Math.max(bent, Math.sqrt(Math.max(0, distance ** 2 - noise ** 2)));
}

/** Where a flank reaches the empty level whose slope grows outwards as it does from its next part to its line. */
function steeperReach(line: EdgeLine, next: EdgeLine, empty: EmptyLevel): number {
  const growth = (line.slope - next.slope) / (line.count + next.meanDistance - line.meanDistance);
  const outside = line.slope + growth * (line.meanDistance + reach(line, empty) / 2);
  return (line.intercept - empty.newtons) / outside;
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

/**
 * How uncertain an edge is where force is at the threshold again within the hold, samples; 0 where it is not. A take-off
 * lies anywhere until the next such sample: rectangular. Before a touchdown nothing sets a plate ringing, so such a
 * sample is contact already and the way to the outermost, which is known and not corrected, counts in full
 * (JCGM 100:2008, F.2.4.5).
 */
function againSamples(force: Float64Array, first: number, direction: 1 | -1, threshold: number, hold: number): number {
  let outermost = 0;
  for (let step = 1; step < hold; step += 1) {
    const value = force[first + direction * step];
    if (value === undefined || value < threshold) continue;
    if (direction === 1) return step / Math.sqrt(3);
    outermost = step;
  }
  return outermost;
}
