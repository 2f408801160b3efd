/** Names of the events (METHODS §3); public. */

export const eventNames = [
  "onset",
  "endOfUnweighting",
  "lowestPosition",
  "takeoff",
  "touchdown",
  "landingEnd",
] as const;

export type EventName = (typeof eventNames)[number];
