import type { Settings } from "../settings/settings.ts";
import { maximumForce } from "../trial/force-signal.ts";
import type { DetectionInput } from "./detection.ts";
import { entryPushStart } from "./entry-push.ts";

/**
 * Weight as far as the edges of contacts need it: it only says up to which force a flank is taken for a straight line
 * (5 % of it). Where weight is unknown half the largest force of the push, or of the landing, does that: on simulated
 * jumps edges moved by less than a tenth of a millisecond.
 */
export function edgeWeight({ total, cut, weight }: DetectionInput, settings: Settings): number {
  if (!Number.isNaN(weight.newtons)) return weight.newtons;
  const { kind, contact, flight, landing } = cut;
  const { start, end } =
    kind === "landing"
      ? landing
      : {
          start: entryPushStart(contact, flight, total.rateHz, settings),
          end: Math.max(contact.start + 1, flight.start),
        };
  return maximumForce(total, start, Math.min(end, total.force.length - 1)).newtons / settings.pushPeakWeights;
}
