import type { EventEdit } from "../stated/event-edit.ts";
import { roundEventTime } from "./edit-events.ts";

/** One edge of a contact of repeated hops, in order of time. */
export interface HopEdge {
  readonly name: "touchdown" | "takeoff";
  /** Fractional sample. */
  readonly sample: number;
}

/**
 * The edges where a person has put them, each clamped between its neighbours. The number in an edit counts touchdowns
 * from 1 and names the take-off that follows; the entry jump's take-off has none.
 */
export function placeHopEdges(edges: readonly HopEdge[], edits: readonly EventEdit[], rateHz: number): HopEdge[] {
  const placed: HopEdge[] = [];
  let contact = 0;
  for (const [index, { name, sample }] of edges.entries()) {
    if (name === "touchdown") contact += 1;
    const number = contact === 0 ? undefined : contact;
    const edit = edits.findLast((each) => each.name === name && each.contactIndex === number);
    if (edit === undefined) {
      placed.push({ name, sample });
      continue;
    }
    const low = placed.at(-1)?.sample ?? 0;
    const high = edges[index + 1]?.sample ?? Number.POSITIVE_INFINITY;
    placed.push({ name, sample: Math.min(high, Math.max(low, roundEventTime(edit.time) * rateHz)) });
  }
  return placed;
}
