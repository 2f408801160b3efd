import type { SampleSpan } from "../trial/sample-span.ts";
import { anchorMotion } from "./anchor-motion.ts";
import { emptyLevel } from "./contact-edge.ts";
import { contactPeak, type EdgeSearch, leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { edgeWeight } from "./edge-weight.ts";
import { entryPushStart } from "./entry-push.ts";
import { fallStart } from "./fall-start.ts";
import { type HopEdge, placeHopEdges } from "./hop-edges.ts";
import type { Anchor, HopBout, HopContact, JumpMotion } from "./jump-events.ts";
import { integrate } from "./kinematics.ts";

/**
 * Finds the contacts of repeated hops: the take-off of the entry jump, then every touchdown and take-off up to the
 * last, unfollowed contact. Each edge is counted from the empty level of the flight beside it. From an empty plate the
 * first contact is a hop already: its entry jump began beside the plate.
 */
export function detectHops(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const flights = [cut.flight, ...cut.laterFlights];
  const weightNewtons = edgeWeight(input, settings);
  const searchBy = (flight: SampleSpan): EdgeSearch => ({
    signal: total,
    empty: emptyLevel(total, flight, settings),
    weightNewtons,
    settings,
  });

  const edges: HopEdge[] = [];
  for (const [index, flight] of flights.entries()) {
    const before = flights[index - 1];
    const contactStart = before?.end ?? cut.fall?.end ?? entryPushStart(cut.contact, flight, total.rateHz, settings);
    const contact = { start: contactStart, end: flight.start };
    const gap = before ?? cut.fall;
    const touchdown = gap === undefined ? undefined : touchEdge(searchBy(before ?? flight), gap, contact.end);
    const takeoff = leaveEdge(searchBy(flight), contactPeak(total, contact, settings), flight);
    if (takeoff === undefined || (gap !== undefined && touchdown === undefined)) {
      return { missing: "hop", atSample: contact.start };
    }
    if (touchdown !== undefined) edges.push({ name: "touchdown", sample: touchdown });
    edges.push({ name: "takeoff", sample: takeoff });
  }
  const lastFlight = flights.at(-1)!;
  const { lastLanding } = cut;
  const landed = lastLanding.end > lastLanding.start;
  const landing = landed ? touchEdge(searchBy(lastFlight), lastFlight, lastLanding.end) : undefined;
  if (landing !== undefined) edges.push({ name: "touchdown", sample: landing });

  const hops = boutOf(placeHopEdges(edges, input.edits, total.rateHz));
  const [first, second] = hops.contacts;
  if (first?.takeoff === undefined || second === undefined) return { missing: "hop", atSample: lastFlight.end };

  const before =
    cut.kind === "drop" ? fallStart(cut, total.rateHz, settings) : (cut.quietBefore.at(-1)?.start ?? cut.span.start);
  const start = Math.min(before, weight.still?.start ?? before);
  const unanchored = integrate(total, { start, end: cut.span.end }, weight.newtons, settings.gravity);
  const anchor: Anchor =
    weight.still === undefined ? { kind: "flight" } : { kind: "still", window: weight.still, positionZero: "window" };
  // Without quiet standing, the flight of the first hop tells the velocity.
  const flight = { contactTouchdown: first.touchdown, takeoff: first.takeoff, touchdown: second.touchdown };
  return { test, motion: anchorMotion(unanchored, anchor, flight), anchor, events: {}, contacts: [], hops };
}

/** Pairs touchdowns and take-offs into contacts; a take-off with no touchdown before it is the entry jump's. */
function boutOf(edges: readonly HopEdge[]): HopBout {
  const contacts: HopContact[] = [];
  let entryTakeoff: number | undefined;
  for (const { name, sample } of edges) {
    const open = contacts.at(-1);
    if (name === "touchdown") contacts.push({ touchdown: sample });
    else if (open === undefined) entryTakeoff = sample;
    else contacts[contacts.length - 1] = { ...open, takeoff: sample };
  }
  return { ...(entryTakeoff === undefined ? {} : { entryTakeoff }), contacts };
}
