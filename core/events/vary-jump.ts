import type { Side } from "../limb.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import type { EventName } from "./event.ts";
import type { JumpEvents, JumpMotion, LimbContact } from "./jump-events.ts";
import { anchored, type Kinematics, stillOver, withWeight } from "./kinematics.ts";
import { velocityCrossing, weightCrossing } from "./turning-points.ts";

/** Small changes to what a jump's motion and events were made from. */
export interface JumpChange {
  readonly weightNewtons?: number;
  /** m/s */
  readonly startVelocity?: number;
  /** Samples. */
  readonly onset?: number;
  readonly takeoff?: number;
  readonly touchdown?: number;
  /** The contact events of one limb on its own plate, both moved by their own amounts, samples. */
  readonly limbContact?: { readonly side: Side; readonly takeoff: number; readonly touchdown: number };
}

/** Turning points move little under a small change; they are looked for this far around, in seconds. */
const reachSeconds = 0.1;

/**
 * The same jump with one input changed and everything that follows from it computed again: motion, turning points
 * and landing end. Events a person has placed stay.
 */
export function varyJump(
  jump: JumpMotion,
  change: JumpChange,
  window: SampleSpan | undefined,
  fixed: ReadonlySet<EventName>,
): JumpMotion {
  const onset = jump.events.onset + (change.onset ?? 0);
  const takeoff = jump.events.takeoff + (change.takeoff ?? 0);
  const motion = varyMotion(jump.motion, change, window, onset);
  const reach = Math.ceil(reachSeconds * motion.signal.rateHz);
  const turn = (name: "endOfUnweighting" | "lowestPosition" | "landingEnd", own: number): number => {
    if (fixed.has(name)) return own;
    const crossing = name === "endOfUnweighting" ? weightCrossing : velocityCrossing;
    return crossing(motion, own, reach) ?? own;
  };
  const { touchdown, landingEnd } = jump.events;
  const events: JumpEvents = {
    onset,
    endOfUnweighting: turn("endOfUnweighting", jump.events.endOfUnweighting),
    lowestPosition: turn("lowestPosition", jump.events.lowestPosition),
    takeoff,
    ...(touchdown === undefined ? {} : { touchdown: touchdown + (change.touchdown ?? 0) }),
    ...(landingEnd === undefined ? {} : { landingEnd: turn("landingEnd", landingEnd) }),
  };
  const contacts = jump.contacts.map((contact) => varyContact(contact, change.limbContact));
  return { motion, events, contacts };
}

function varyContact(contact: LimbContact, change: JumpChange["limbContact"]): LimbContact {
  if (change === undefined || change.side !== contact.side) return contact;
  return {
    side: contact.side,
    ...(contact.takeoff === undefined ? {} : { takeoff: contact.takeoff + change.takeoff }),
    ...(contact.touchdown === undefined ? {} : { touchdown: contact.touchdown + change.touchdown }),
  };
}

function varyMotion(motion: Kinematics, change: JumpChange, window: SampleSpan | undefined, onset: number): Kinematics {
  let varied = motion;
  if (change.weightNewtons !== undefined) varied = withWeight(varied, motion.weightNewtons + change.weightNewtons);
  if (window === undefined) varied = anchored(varied, onset, { velocity: 0 });
  else if (change.weightNewtons !== undefined) varied = stillOver(varied, window);
  if (change.startVelocity !== undefined) {
    varied = { ...varied, startVelocity: varied.startVelocity + change.startVelocity };
  }
  return anchored(varied, onset, { position: 0 });
}
