import type { TrialEvent } from "../events/event.ts";
import type { Bearer, Side } from "../ground/limb.ts";

/** How long one limb stood on its own plate in a contact, seconds. */
export type LimbContactTime = Bearer<Side> & { readonly contactTime: number };

/** Contact times of the limbs in one contact of repeated hops, left first; those whose both ends are known. */
export function hopLimbTimes(events: readonly TrialEvent[], contactIndex: number): readonly LimbContactTime[] {
  return (["left", "right"] as const).flatMap((side) => {
    const own = events.filter((event) => event.side === side && event.contactIndex === contactIndex);
    const touchdown = own.find((event) => event.name === "touchdown")?.time;
    const takeoff = own.find((event) => event.name === "takeoff")?.time;
    return touchdown === undefined || takeoff === undefined ? [] : [{ side, contactTime: takeoff - touchdown }];
  });
}
