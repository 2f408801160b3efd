import { maximumForce } from "../trial/force-signal.ts";
import { emptyLevel } from "./contact-edge.ts";
import { leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { placeEvent, placeWanted, type TrialEdits } from "./edit-events.ts";
import type { JumpMotion } from "./jump-events.ts";
import { lastSample } from "./kinematics.ts";
import { placeLandingEnd } from "./landing-end.ts";
import { limbContacts } from "./limb-contacts.ts";
import { findOnset, onsetBand } from "./onset.ts";
import { motionFromOnset, startStanding } from "./standing-start.ts";

/**
 * Finds the events of a squat jump: onset backwards from the rise, velocity zero in the hold before it, take-off,
 * touchdown and landing end (METHODS §3, §6).
 */
export function detectSquatJump(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const edits: TrialEdits = { test, edits: input.edits, rateHz: total.rateHz };
  const standing = startStanding(input);

  const peak = Math.round(maximumForce(total, standing.earliest, cut.flight.start - 1).sample);
  const band = onsetBand(weight.newtons, weight.deviation, settings);
  const { force, rateHz } = total;
  const place = { force, rateHz, from: peak, earliest: standing.start, weightNewtons: weight.newtons, band };
  const onset = placeWanted(edits, "onset", standing.start, peak) ?? findOnset(place, 1, settings);
  if (onset === undefined) return { missing: "onset", atSample: peak };
  const motion = motionFromOnset(standing, onset);

  const search = {
    signal: total,
    empty: emptyLevel(total, cut.flight, settings),
    weightNewtons: weight.newtons,
    settings,
  };
  const detectedTakeoff = leaveEdge(search, peak, cut.flight);
  if (detectedTakeoff === undefined) return { missing: "take-off", atSample: cut.flight.start };
  const detectedTouchdown = cut.landed ? touchEdge(search, cut.flight, cut.landing.end) : undefined;

  const end = lastSample(motion);
  const takeoff = placeEvent(edits, "takeoff", detectedTakeoff, onset, detectedTouchdown ?? end);
  const touchdown =
    detectedTouchdown === undefined ? undefined : placeEvent(edits, "touchdown", detectedTouchdown, takeoff, end);
  const landingEnd = touchdown === undefined ? undefined : placeLandingEnd(motion, touchdown, edits);
  const events = {
    onset,
    takeoff,
    ...(touchdown === undefined ? {} : { touchdown }),
    ...(landingEnd === undefined ? {} : { landingEnd }),
  };
  return { test, motion, anchor: standing.anchor, events, contacts: limbContacts(input, peak) };
}
