import { emptyLevel } from "./contact-edge.ts";
import { contactPeak, type EdgeSearch, leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput } from "./detection.ts";
import { edgeWeight } from "./edge-weight.ts";
import type { LimbContact } from "./jump-events.ts";

/**
 * Contact events of each limb on its own plate, by the rules of the whole body and the same 5 % of its weight
 * (METHODS §3).
 * @param pushSample sample of the push from which a standing start's take-off is searched
 */
export function limbContacts(input: DetectionInput, pushSample?: number): readonly LimbContact[] {
  const { limbs, cut, settings } = input;
  const weightNewtons = edgeWeight(input, settings);
  return limbs.map((signal) => {
    const { fall, contact, flight } = cut;
    const empty = emptyLevel(signal, flight, settings);
    const search: EdgeSearch = { signal, empty, weightNewtons, settings };
    const jumps = cut.kind !== "landing";
    const from = pushSample ?? contactPeak(signal, contact, settings);
    const contactTouchdown = jumps && fall !== undefined ? touchEdge(search, fall, contact.end) : undefined;
    const takeoff = jumps ? leaveEdge(search, from, flight) : undefined;
    const touchdown = cut.landed ? touchEdge(search, flight, cut.landing.end) : undefined;
    return {
      side: signal.side,
      ...(contactTouchdown === undefined ? {} : { contactTouchdown }),
      ...(takeoff === undefined ? {} : { takeoff }),
      ...(touchdown === undefined ? {} : { touchdown }),
    };
  });
}
