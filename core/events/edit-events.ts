import type { TestKind } from "../ground/test-kind.ts";
import type { EventEdit } from "../stated/event-edit.ts";
import type { EventKey } from "./jump-events.ts";
import { editsEvent } from "./published-events.ts";

/**
 * Moved events are kept to this, so that the same number is stored, shown and computed with. No setting: moved events
 * are stored so.
 */
const resolutionSeconds = 0.0001;

/** A time as a moved event is kept: to 0.1 ms. */
export function roundEventTime(seconds: number): number {
  return Math.round(seconds / resolutionSeconds) / Math.round(1 / resolutionSeconds);
}

/** What a person has moved in one trial. */
export interface TrialEdits {
  readonly test: TestKind;
  readonly edits: readonly EventEdit[];
  readonly rateHz: number;
}

/** Where an event was moved to, as a fractional sample; undefined when it was not moved. */
function editedSample({ test, edits, rateHz }: TrialEdits, key: EventKey): number | undefined {
  const edit = edits.findLast((each) => editsEvent(each, test, key));
  return edit === undefined ? undefined : roundEventTime(edit.time) * rateHz;
}

/**
 * A moved event stays this far from its neighbours: no phase has no length. No setting: ten steps of what is stored,
 * which keep phases from vanishing and decide no result.
 */
export const leastApartSeconds = 0.001;

/** An event where it was moved to, clamped between its neighbours; where it was detected when nobody moved it. */
export function placeEvent(edits: TrialEdits, key: EventKey, detected: number, low: number, high: number): number {
  return placeWanted(edits, key, low, high) ?? detected;
}

/** Where a moved event stands between its neighbours; undefined when nobody moved it. */
export function placeWanted(edits: TrialEdits, key: EventKey, low: number, high: number): number | undefined {
  const wanted = editedSample(edits, key);
  if (wanted === undefined) return undefined;
  const apart = Math.min(leastApartSeconds * edits.rateHz, (high - low) / 2);
  return Math.min(high - apart, Math.max(low + apart, wanted));
}
