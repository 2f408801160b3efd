import type { EventEdit, EventName } from "./event.ts";

/** Moved events are kept to this, so that the same number is stored, shown and computed with. */
const resolutionSeconds = 0.0001;

/** A time as a moved event is kept: to 0.1 ms. */
export function roundEventTime(seconds: number): number {
  return Math.round(seconds / resolutionSeconds) / Math.round(1 / resolutionSeconds);
}

/** Where an event was moved to, as a fractional sample; undefined when it was not moved. */
export function editedSample(edits: readonly EventEdit[], name: EventName, rateHz: number): number | undefined {
  const edit = edits.findLast((each) => each.name === name);
  return edit === undefined ? undefined : roundEventTime(edit.time) * rateHz;
}
