import { anchorMotion } from "./anchor-motion.ts";
import { emptyLevel } from "./contact-edge.ts";
import { contactPeak, leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { edgeWeight } from "./edge-weight.ts";
import { placeEvent, type TrialEdits } from "./edit-events.ts";
import { fallStart } from "./fall-start.ts";
import type { Anchor, JumpMotion } from "./jump-events.ts";
import { integrate, knowsVelocity, lastSample } from "./kinematics.ts";
import { placeLandingEnd } from "./landing-end.ts";
import { limbContacts } from "./limb-contacts.ts";
import { lowestPositionIndex, velocityCrossing } from "./turning-points.ts";

/**
 * Finds the events of a drop jump: both edges of the contact, the landing, then the motion backwards from the final
 * quiet standing (by the flight time where nobody stands still), the lowest position and the landing end. The edges alone
 * where no velocity is known.
 */
export function detectDropJump(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const { fall, contact, flight } = cut;
  const edits: TrialEdits = { test, edits: input.edits, rateHz: total.rateHz };
  if (fall === undefined) return { missing: "touchdown", atSample: contact.start };

  const search = {
    signal: total,
    empty: emptyLevel(total, flight, settings),
    weightNewtons: edgeWeight(input, settings),
    settings,
  };
  const detectedTouchdown = touchEdge(search, fall, contact.end);
  if (detectedTouchdown === undefined) return { missing: "touchdown", atSample: contact.start };
  const detectedTakeoff = leaveEdge(search, contactPeak(total, contact, settings), flight);
  if (detectedTakeoff === undefined) return { missing: "take-off", atSample: flight.start };
  const detectedLanding = cut.landed ? touchEdge(search, flight, cut.landing.end) : undefined;

  const start = fallStart(cut, total.rateHz, settings);
  const unanchored = integrate(total, { start, end: cut.span.end }, weight.newtons, settings.gravity);
  const end = lastSample(unanchored);
  const contactTouchdown = placeEvent(edits, "contactTouchdown", detectedTouchdown, start, detectedTakeoff);
  const takeoff = placeEvent(edits, "takeoff", detectedTakeoff, contactTouchdown, detectedLanding ?? end);
  const touchdown =
    detectedLanding === undefined ? undefined : placeEvent(edits, "touchdown", detectedLanding, takeoff, end);
  const edges = { contactTouchdown, takeoff, ...(touchdown === undefined ? {} : { touchdown }) };

  const anchor: Anchor =
    weight.still === undefined ? { kind: "flight" } : { kind: "still", window: weight.still, positionZero: "window" };
  const motion = anchorMotion(unanchored, anchor, edges);
  const contacts = limbContacts(input);
  if (!knowsVelocity(motion)) return { test, motion, anchor, events: edges, contacts };
  const lowest = lowestPositionIndex(motion, Math.ceil(contactTouchdown), Math.floor(takeoff));
  const detectedLowest = velocityCrossing(motion, lowest, 1);
  if (detectedLowest === undefined || detectedLowest <= contactTouchdown || detectedLowest >= takeoff) {
    return { missing: "turning point", atSample: lowest };
  }
  const lowestPosition = placeEvent(edits, "lowestPosition", detectedLowest, contactTouchdown, takeoff);
  const landingEnd = touchdown === undefined ? undefined : placeLandingEnd(motion, touchdown, edits);
  const events = { ...edges, lowestPosition, ...(landingEnd === undefined ? {} : { landingEnd }) };
  return { test, motion, anchor, events, contacts };
}
