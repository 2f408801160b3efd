import { anchorMotion } from "./anchor-motion.ts";
import { emptyLevel } from "./contact-edge.ts";
import { touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { edgeWeight } from "./edge-weight.ts";
import { placeEvent, type TrialEdits } from "./edit-events.ts";
import { fallStart } from "./fall-start.ts";
import type { Anchor, JumpMotion } from "./jump-events.ts";
import { integrate, knowsVelocity, lastSample } from "./kinematics.ts";
import { placeLandingEnd } from "./landing-end.ts";
import { limbContacts } from "./limb-contacts.ts";

/** Finds touchdown and end of a drop landing, its motion backwards from the final quiet standing. */
export function detectDropLanding(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const edits: TrialEdits = { test, edits: input.edits, rateHz: total.rateHz };
  const search = {
    signal: total,
    empty: emptyLevel(total, cut.flight, settings),
    weightNewtons: edgeWeight(input, settings),
    settings,
  };
  const detected = touchEdge(search, cut.flight, cut.landing.end);
  if (detected === undefined) return { missing: "touchdown", atSample: cut.flight.end };
  const start = fallStart(cut, total.rateHz, settings);
  const unanchored = integrate(total, { start, end: cut.span.end }, weight.newtons, settings.gravity);
  const touchdown = placeEvent(edits, "touchdown", detected, start, lastSample(unanchored));
  // Without quiet standing nothing tells the velocity of a landing.
  const anchor: Anchor =
    weight.still === undefined ? { kind: "flight" } : { kind: "still", window: weight.still, positionZero: "window" };
  const motion = anchorMotion(unanchored, anchor, { touchdown });
  const landingEnd = knowsVelocity(motion) ? placeLandingEnd(motion, touchdown, edits) : undefined;
  const events = { touchdown, ...(landingEnd === undefined ? {} : { landingEnd }) };
  return { test, motion, anchor, events, contacts: limbContacts(input) };
}
