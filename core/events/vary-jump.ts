import type { EventName } from "../ground/event-name.ts";
import type { Side } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import { anchorPosition, anchorVelocity } from "./anchor-motion.ts";
import {
  contactKeys,
  type EventKey,
  eventKeys,
  type HopBout,
  type JumpEvents,
  type JumpMotion,
  type LimbContact,
} from "./jump-events.ts";
import { type Kinematics, withWeight } from "./kinematics.ts";
import { velocityCrossing, weightCrossing } from "./turning-points.ts";

/** Shifts of contact events, samples. */
type EdgeShifts = Partial<Record<(typeof contactKeys)[number], number>>;

/** Shifts of turning points beyond what weight and velocity move them by, samples. */
type TurningShifts = Partial<Record<"endOfUnweighting" | "lowestPosition" | "landingEnd", number>>;

/** Small changes to what a jump's motion and events were made from. */
export interface JumpChange {
  readonly weightNewtons?: number;
  /** m/s */
  readonly startVelocity?: number;
  /** m */
  readonly startPosition?: number;
  /** Shifts of events of the whole body, samples. */
  readonly events?: EdgeShifts & { readonly onset?: number } & TurningShifts;
  /** Shifts of the contact events of one limb on its own plate, samples. */
  readonly limbContact?: { readonly side: Side } & EdgeShifts;
  /** Shifts of all touchdowns or all take-offs of repeated hops together, samples: their shape is common. */
  readonly hops?: { readonly touchdown?: number; readonly takeoff?: number };
}

/**
 * The same jump with one input changed and everything that follows from it computed again: motion, turning points
 * and landing end. Events a person has placed stay.
 */
export function varyJump(
  jump: JumpMotion,
  change: JumpChange,
  fixed: ReadonlySet<EventName>,
  settings: Settings,
): JumpMotion {
  const shifted: Partial<Record<EventKey, number>> = { ...jump.events };
  for (const key of ["onset", ...contactKeys] as const) {
    const own = jump.events[key];
    const shift = change.events?.[key];
    if (own !== undefined && shift !== undefined) shifted[key] = own + shift;
  }
  const motion = varyMotion(jump, change, shifted);
  const reach = Math.ceil(settings.variedReachSeconds * motion.signal.rateHz);
  for (const key of ["endOfUnweighting", "lowestPosition", "landingEnd"] as const) {
    const own = jump.events[key];
    if (own === undefined || fixed.has(key)) continue;
    const crossing = key === "endOfUnweighting" ? weightCrossing : velocityCrossing;
    shifted[key] = (crossing(motion, own, reach) ?? own) + (change.events?.[key] ?? 0);
  }
  return {
    ...jump,
    motion,
    events: inOrder(shifted),
    contacts: jump.contacts.map((contact) => varyContact(contact, change.limbContact)),
    ...(jump.hops === undefined ? {} : { hops: varyHops(jump.hops, change.hops) }),
  };
}

function inOrder(events: JumpEvents): JumpEvents {
  return Object.fromEntries(eventKeys.filter((key) => events[key] !== undefined).map((key) => [key, events[key]]));
}

function varyContact(contact: LimbContact, change: JumpChange["limbContact"]): LimbContact {
  if (change === undefined || change.side !== contact.side) return contact;
  const moved = contactKeys.flatMap((key) => {
    const own = contact[key];
    return own === undefined ? [] : [[key, own + (change[key] ?? 0)] as const];
  });
  return { side: contact.side, ...Object.fromEntries(moved) };
}

function varyHops(hops: HopBout, change: JumpChange["hops"]): HopBout {
  const { touchdown = 0, takeoff = 0 } = change ?? {};
  return {
    ...(hops.entryTakeoff === undefined ? {} : { entryTakeoff: hops.entryTakeoff + takeoff }),
    contacts: hops.contacts.map((contact) => ({
      touchdown: contact.touchdown + touchdown,
      ...(contact.takeoff === undefined ? {} : { takeoff: contact.takeoff + takeoff }),
    })),
  };
}

function varyMotion({ motion, anchor, hops }: JumpMotion, change: JumpChange, events: JumpEvents): Kinematics {
  // Nothing measured in repeated hops reads velocity or position.
  if (hops !== undefined) {
    return change.weightNewtons === undefined
      ? motion
      : withWeight(motion, motion.weightNewtons + change.weightNewtons);
  }
  let varied = motion;
  if (change.weightNewtons !== undefined) varied = withWeight(varied, motion.weightNewtons + change.weightNewtons);
  if (anchor.kind !== "still" || change.weightNewtons !== undefined) varied = anchorVelocity(varied, anchor, events);
  if (change.startVelocity !== undefined) {
    varied = { ...varied, startVelocity: varied.startVelocity + change.startVelocity };
  }
  varied = anchorPosition(varied, anchor, events);
  return { ...varied, startPosition: varied.startPosition + (change.startPosition ?? 0) };
}
