import type { JumpEvents } from "./jump-events.ts";

/** A phase from event to event, fractional samples. */
export interface Phase {
  readonly from: number;
  readonly to: number;
}

/** The phases a trial has (METHODS §4); which follow from its events. */
export interface JumpPhases {
  readonly unweighting: Phase | undefined;
  readonly braking: Phase | undefined;
  readonly propulsion: Phase | undefined;
  readonly flight: Phase | undefined;
  readonly landing: Phase | undefined;
}

/**
 * Phases between the events that are there. A drop jump's contact splits at the lowest position; a squat jump is
 * propulsion from its onset on.
 */
export function phasesOf(events: JumpEvents): JumpPhases {
  const { onset, endOfUnweighting, contactTouchdown, lowestPosition, takeoff, touchdown, landingEnd } = events;
  return {
    unweighting: between(onset, endOfUnweighting),
    braking: between(endOfUnweighting ?? contactTouchdown, lowestPosition),
    propulsion: between(lowestPosition ?? onset, takeoff),
    flight: between(takeoff, touchdown),
    landing: between(touchdown, landingEnd),
  };
}

function between(from: number | undefined, to: number | undefined): Phase | undefined {
  return from === undefined || to === undefined ? undefined : { from, to };
}
