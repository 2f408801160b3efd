import { leastApartSeconds } from "../../core/events/edit-events.ts";
import { isOfLimb, type TrialEvent } from "../../core/events/event.ts";
import type { EventName } from "../../core/ground/event-name.ts";
import type { EventEdit } from "../../core/stated/event-edit.ts";
import { words } from "../words/words.ts";

const prose = words.screens.traceTables;

/** Moved events are kept to 0.1 ms. */
export const keptSeconds = 0.0001;

/** Between which times an event may be moved, in seconds. */
export interface EventBounds {
  readonly earliest: number;
  readonly latest: number;
}

/** A time as it is kept: to the nearest 0.1 ms. */
export function roundKept(seconds: number): number {
  return Math.round(seconds / keptSeconds) / Math.round(1 / keptSeconds);
}

/** The events a person may move: those of the whole body, in order of time. */
export function movableEvents(events: readonly TrialEvent[]): readonly TrialEvent[] {
  return events.filter((each) => !isOfLimb(each)).sort((a, b) => a.time - b.time);
}

/** An event may move until a millisecond before its neighbours, or to the ends of the trial. */
export function eventBounds(
  events: readonly TrialEvent[],
  moved: TrialEvent,
  trial: { readonly startSeconds: number; readonly endSeconds: number },
): EventBounds {
  const ordered = movableEvents(events);
  const place = ordered.findIndex((each) => sameEvent(each, moved));
  const before = ordered[place - 1];
  const after = ordered[place + 1];
  const from = before?.time ?? trial.startSeconds;
  const to = after?.time ?? trial.endSeconds;
  const apart = Math.min(leastApartSeconds, (to - from) / 2);
  return {
    earliest: before === undefined ? from : from + apart,
    latest: after === undefined ? to : to - apart,
  };
}

/** The nearest allowed time, kept to 0.1 ms and never outside the bounds. */
export function clampEvent(seconds: number, bounds: EventBounds): number {
  const perSecond = Math.round(1 / keptSeconds);
  // a little slack, so that a bound which is itself a kept time is not pushed a step inwards by binary rounding
  const slack = 1e-6;
  const least = Math.max(0, Math.ceil(bounds.earliest * perSecond - slack));
  const most = Math.floor(bounds.latest * perSecond + slack);
  return Math.min(Math.max(Math.round(seconds * perSecond), least), Math.max(least, most)) / perSecond;
}

/** True for the same event of the same contact. */
export function sameEvent(a: EventKey, b: EventKey): boolean {
  return a.name === b.name && a.contactIndex === b.contactIndex;
}

export interface EventKey {
  readonly name: EventName;
  readonly contactIndex?: number;
}

/** The trial's edits with one event moved, the others untouched. */
export function withEdit(edits: readonly EventEdit[], event: EventKey, seconds: number): readonly EventEdit[] {
  const contact = event.contactIndex === undefined ? {} : { contactIndex: event.contactIndex };
  return [...withoutEdit(edits, event), { name: event.name, ...contact, time: seconds }];
}

/** The trial's edits with one event reset to detected. */
export function withoutEdit(edits: readonly EventEdit[], event: EventKey): readonly EventEdit[] {
  return edits.filter((each) => !sameEvent(each, event));
}

/** The keys that move an event, as the screen says them. */
export const moveKeysWords = prose.eventKeys;

interface MoveKeys {
  readonly shiftKey: boolean;
  readonly altKey: boolean;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
}

/** What an arrow key moves by: 1 ms, with Shift 10 ms; nothing with any other modifier, which belongs to others. */
export function keyStepSeconds({ shiftKey, altKey, ctrlKey, metaKey }: MoveKeys): number {
  if (altKey || ctrlKey || metaKey) return 0;
  return shiftKey ? 0.01 : 0.001;
}

/** Seconds on screens, as fine as they are kept. */
export function secondsText(seconds: number): string {
  return seconds.toFixed(4);
}
