import { eventLabel, type TrialEvent } from "../../core/events/event.ts";
import { sentenceCase } from "../shell/words.ts";
import { type EventBounds, keptSeconds, secondsText } from "./event-move.ts";

/** A time in seconds as a person wrote it, with a point or a comma; undefined where it is none. */
export function secondsFrom(written: string): number | undefined {
  const seconds = Number(written.trim().replace(",", "."));
  return written.trim() !== "" && Number.isFinite(seconds) ? seconds : undefined;
}

/** Why nothing moved although something was written. */
export function noTimeWords(event: TrialEvent, written: string, stays: number): string {
  const why = written.trim() === "" ? "No time was written" : `“${written.trim()}” is no time in seconds`;
  return `${why}, so ${eventLabel(event.name)} stays at ${secondsText(stays)} s.`;
}

/** Where an event stands instead, and why; "" where it stands as wanted, to the tenth of a millisecond. */
export function clampedWords(event: TrialEvent, wanted: number, kept: number, bounds: EventBounds): string {
  if (Math.abs(wanted - kept) <= keptSeconds) return "";
  const range = `${secondsText(bounds.earliest)} s to ${secondsText(bounds.latest)} s`;
  return `${sentenceCase(eventLabel(event.name))} stops at ${secondsText(kept)} s: events keep their order, so it can stand from ${range}.`;
}
