import type { TrialEvent } from "../../core/events/event.ts";
import { type TestKind, testFacts } from "../../core/ground/test-kind.ts";
import { sentenceCase } from "../shell/words.ts";
import { words } from "../words/words.ts";
import { type EventBounds, keptSeconds, secondsText } from "./event-move.ts";

const prose = words.screens.traceTables;

/** The event's name, numbered where its test counts contacts: "touchdown 2". A landing's only touchdown needs none. */
export function eventWords({ name, contactIndex }: Pick<TrialEvent, "name" | "contactIndex">, test?: TestKind): string {
  return contactIndex === undefined || (test !== undefined && testFacts(test).landings === 1)
    ? words.events.label(name)
    : `${words.events.label(name)} ${contactIndex}`;
}

/** A time in seconds as a person wrote it, with a point or a comma; undefined where it is none. */
export function secondsFrom(written: string): number | undefined {
  const seconds = Number(written.trim().replace(",", "."));
  return written.trim() !== "" && Number.isFinite(seconds) ? seconds : undefined;
}

/**
 * Why nothing moved although something was written.
 * @param event its name in words
 */
export function noTimeWords(event: string, written: string, stays: number): string {
  const why = written.trim() === "" ? prose.noTimeWritten : prose.isNoTime(written.trim());
  return prose.staysAt(why, event, secondsText(stays));
}

/** Where an event stands instead, and why; "" where it stands as wanted, to the tenth of a millisecond. */
export function clampedWords(event: string, wanted: number, kept: number, bounds: EventBounds): string {
  if (Math.abs(wanted - kept) <= keptSeconds) return "";
  const range = prose.range(secondsText(bounds.earliest), secondsText(bounds.latest));
  return prose.stopsAt(sentenceCase(event), secondsText(kept), range);
}
