import type { EventName } from "../../ground/event-name.ts";

const labels: Readonly<Record<EventName, string>> = {
  onset: "onset",
  endOfUnweighting: "end of unweighting",
  lowestPosition: "lowest position",
  takeoff: "take-off",
  touchdown: "touchdown",
  landingEnd: "landing end",
};

/** How the events are called. */
export const events = {
  /** The event's name as written on screens. */
  label: (name: EventName): string => labels[name],
};
