import type { JumpEvents } from "./jump-events.ts";

/** A phase from event to event, fractional samples. */
export interface Phase {
  readonly from: number;
  readonly to: number;
}

/** The phases a trial has (METHODS §4); which follow from its events. */
export interface JumpPhases {
  readonly unweighting?: Phase;
  readonly braking?: Phase;
  readonly propulsion?: Phase;
  readonly flight?: Phase;
  readonly landing?: Phase;
}

/**
 * Phases between the events that are there. A drop jump's contact splits at the lowest position; a squat jump is
 * propulsion from its onset on.
 */
export function phasesOf(events: JumpEvents): JumpPhases {
  const { onset, endOfUnweighting, contactTouchdown, lowestPosition, takeoff, touchdown, landingEnd } = events;
  const between = (name: keyof JumpPhases, from: number | undefined, to: number | undefined): JumpPhases =>
    from === undefined || to === undefined ? {} : { [name]: { from, to } };
  return {
    ...between("unweighting", onset, endOfUnweighting),
    ...between("braking", endOfUnweighting ?? contactTouchdown, lowestPosition),
    ...between("propulsion", lowestPosition ?? onset, takeoff),
    ...between("flight", takeoff, touchdown),
    ...between("landing", touchdown, landingEnd),
  };
}
