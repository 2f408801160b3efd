import { testFacts } from "../ground/test-kind.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { anchorMotion } from "./anchor-motion.ts";
import { emptyLevel } from "./contact-edge.ts";
import { contactPeak, leaveEdge, touchEdge } from "./contact-search.ts";
import type { DetectionInput, Undetected } from "./detection.ts";
import { edgeWeight } from "./edge-weight.ts";
import { placeEvent, type TrialEdits } from "./edit-events.ts";
import { entryPushStart } from "./entry-push.ts";
import type { Anchor, JumpEvents, JumpMotion } from "./jump-events.ts";
import { integrate, type Kinematics, knowsVelocity, lastSample, velocityAtSample } from "./kinematics.ts";
import { placeLandingEnd } from "./landing-end.ts";
import { limbContacts } from "./limb-contacts.ts";
import { velocityCrossing, weightCrossing } from "./turning-points.ts";

/**
 * Finds the events of a jump from standing whose recording begins in mid-movement: take-off and touchdown from force
 * alone, the rest as far as velocity is known. It is counted back from quiet standing after the landing, as in a drop
 * jump; where only the weight is known half the flight time gives it; without a weight there is none.
 */
export function detectMidMovement(input: DetectionInput): JumpMotion | Undetected {
  const { test, total, cut, weight, settings } = input;
  const edits: TrialEdits = { test, edits: input.edits, rateHz: total.rateHz };
  const weightNewtons = edgeWeight(input, settings);
  const search = { signal: total, empty: emptyLevel(total, cut.flight, settings), weightNewtons, settings };
  const push: SampleSpan = {
    start: entryPushStart(cut.contact, cut.flight, total.rateHz, settings),
    end: cut.flight.start,
  };
  const pushPeak = contactPeak(total, push, settings);
  const detectedTakeoff = leaveEdge(search, pushPeak, cut.flight);
  if (detectedTakeoff === undefined) return { missing: "take-off", atSample: cut.flight.start };
  const detectedTouchdown = cut.landed ? touchEdge(search, cut.flight, cut.landing.end) : undefined;

  const start = cut.kind === "standing" ? Math.max(cut.span.start, cut.contact.start) : cut.span.start;
  const unanchored = integrate(total, { start, end: cut.span.end }, weight.newtons, settings.gravity);
  const end = lastSample(unanchored);
  const takeoff = placeEvent(edits, "takeoff", detectedTakeoff, start, detectedTouchdown ?? end);
  const touchdown =
    detectedTouchdown === undefined ? undefined : placeEvent(edits, "touchdown", detectedTouchdown, takeoff, end);
  const edges = { takeoff, ...(touchdown === undefined ? {} : { touchdown }) };
  const anchor: Anchor =
    weight.still === undefined ? { kind: "flight" } : { kind: "still", window: weight.still, positionZero: "window" };
  const motion = anchorMotion(unanchored, anchor, edges);
  const isKnown = knowsVelocity(motion);
  const turning = isKnown && testFacts(test).turn === "dip" ? turningPoints(motion, takeoff, edits) : {};
  const landingEnd = isKnown && touchdown !== undefined ? placeLandingEnd(motion, touchdown, edits) : undefined;
  const events = { ...turning, ...edges, ...(landingEnd === undefined ? {} : { landingEnd }) };
  return { test, motion, anchor, events, contacts: limbContacts(input, pushPeak) };
}

/**
 * Lowest position and end of unweighting, each where the recording still holds it: back from the take-off to the last
 * sample of falling, and on to the fastest of that fall.
 */
function turningPoints(
  motion: Kinematics,
  takeoff: number,
  edits: TrialEdits,
): Pick<JumpEvents, "endOfUnweighting" | "lowestPosition"> {
  const { startSample } = motion;
  let falling = Math.floor(takeoff);
  while (falling > startSample && velocityAtSample(motion, falling) >= 0) falling -= 1;
  const detectedLowest = velocityCrossing(motion, falling, 1);
  if (detectedLowest === undefined || detectedLowest >= takeoff) return {};
  let fastest = falling;
  for (let index = falling; index >= startSample; index -= 1) {
    const velocity = velocityAtSample(motion, index);
    if (velocity >= 0) break;
    if (velocity < velocityAtSample(motion, fastest)) fastest = index;
  }
  const detectedEnd = fastest === startSample ? undefined : weightCrossing(motion, fastest, 1);
  const endOfUnweighting =
    detectedEnd === undefined || detectedEnd >= detectedLowest
      ? undefined
      : placeEvent(edits, "endOfUnweighting", detectedEnd, startSample, detectedLowest);
  const lowestPosition = placeEvent(edits, "lowestPosition", detectedLowest, endOfUnweighting ?? startSample, takeoff);
  return { ...(endOfUnweighting === undefined ? {} : { endOfUnweighting }), lowestPosition };
}
