import type { Settings } from "../settings/settings.ts";
import { minimumIndex } from "../trial/force-signal.ts";
import { emptyLevel } from "./contact-edge.ts";
import { leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { placeEvent, placeWanted, type TrialEdits } from "./edit-events.ts";
import type { JumpMotion } from "./jump-events.ts";
import { type Kinematics, lastSample } from "./kinematics.ts";
import { placeLandingEnd } from "./landing-end.ts";
import { limbContacts } from "./limb-contacts.ts";
import { findOnset, onsetBand } from "./onset.ts";
import { motionFromOnset, startStanding } from "./standing-start.ts";
import { lowestPositionIndex, lowestVelocityIndex, velocityCrossing, weightCrossing } from "./turning-points.ts";

/**
 * Finds the events of a countermovement jump in the order of METHODS §3: motion, lowest position, most negative
 * velocity, unweighting minimum, onset backwards from it, contact events, landing end.
 */
export function detectCountermovement(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const edits: TrialEdits = { test, edits: input.edits, rateHz: total.rateHz };
  const standing = startStanding(input);

  const dip = findDip(standing.moving, standing.earliest, cut.flight.start - 1, settings);
  const band = onsetBand(weight.newtons, weight.deviation, settings);
  const detectedOnset = findOnset(
    {
      force: total.force,
      rateHz: total.rateHz,
      from: dip.minimum,
      earliest: standing.start,
      weightNewtons: weight.newtons,
      band,
    },
    -1,
    settings,
  );
  const foundOnset = placeWanted(edits, "onset", standing.start, dip.fastest) ?? detectedOnset;
  if (foundOnset === undefined) return { missing: "onset", atSample: dip.minimum };
  const motion = motionFromOnset(standing, foundOnset);

  // Without a weighing window the velocity is only known from the onset on, so the dip is looked for again.
  const turn =
    standing.anchor.kind === "onset" ? findDip(motion, Math.ceil(foundOnset), cut.flight.start - 1, settings) : dip;
  const reach = Math.ceil(settings.rootReachSeconds * total.rateHz);
  const detectedEnd = weightCrossing(motion, turn.fastest, reach);
  const detectedLowest = velocityCrossing(motion, turn.lowest, reach);
  if (detectedEnd === undefined || detectedLowest === undefined || detectedEnd >= detectedLowest) {
    return { missing: "turning point", atSample: turn.lowest };
  }

  const search = {
    signal: total,
    empty: emptyLevel(total, cut.flight, settings),
    weightNewtons: weight.newtons,
    settings,
  };
  const detectedTakeoff = leaveEdge(search, Math.ceil(detectedLowest), cut.flight);
  if (detectedTakeoff === undefined) return { missing: "take-off", atSample: cut.flight.start };
  const detectedTouchdown = cut.landed ? touchEdge(search, cut.flight, cut.landing.end) : undefined;

  const end = lastSample(motion);
  const endOfUnweighting = placeEvent(edits, "endOfUnweighting", detectedEnd, foundOnset, detectedLowest);
  const lowestPosition = placeEvent(edits, "lowestPosition", detectedLowest, endOfUnweighting, detectedTakeoff);
  const takeoff = placeEvent(edits, "takeoff", detectedTakeoff, lowestPosition, detectedTouchdown ?? end);
  const touchdown =
    detectedTouchdown === undefined ? undefined : placeEvent(edits, "touchdown", detectedTouchdown, takeoff, end);
  const landingEnd = touchdown === undefined ? undefined : placeLandingEnd(motion, touchdown, edits);
  const events = {
    onset: foundOnset,
    endOfUnweighting,
    lowestPosition,
    takeoff,
    ...(touchdown === undefined ? {} : { touchdown }),
    ...(landingEnd === undefined ? {} : { landingEnd }),
  };
  const contacts = limbContacts(input, Math.ceil(lowestPosition));
  return { test, motion, anchor: standing.anchor, events, contacts };
}

/** Turning points at sample resolution: lowest position, most negative velocity and force minimum before it. */
function findDip(motion: Kinematics, from: number, to: number, settings: Settings) {
  const lowest = lowestPositionIndex(motion, from, to);
  const fastest = lowestVelocityIndex(motion, from, lowest);
  const search = Math.round(settings.dipSearchSeconds * motion.signal.rateHz);
  const minimum = minimumIndex(motion.signal.force, Math.max(from, fastest - search), fastest + 1);
  return { lowest, fastest, minimum };
}
