import { daysBetween } from "../../core/gate/days.ts";
import type { ReadingMoment } from "../../core/stated/gate-words.ts";
import { today } from "../shell/dates.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

export const momentWords: Readonly<Record<ReadingMoment, string>> = {
  before: prose.before,
  during: prose.during,
  after: prose.after,
  nextDay: prose.theNextDay,
};

/** The time that an answer about a session's day is about: with the time of day where that day is today. */
export function meantNow(date: string, now = new Date()): string {
  return date === today(now) ? `${date}T${clockNow(now)}` : date;
}

/** "09:40" */
export function clockNow(now = new Date()): string {
  const two = (value: number) => String(value).padStart(2, "0");
  return `${two(now.getHours())}:${two(now.getMinutes())}`;
}

/** The ISO date some days after another. */
export function daysAfter(date: string, days: number): string {
  return new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
}

/** True where something was written on a later day than the one it is about. */
export function isWrittenLater(meant: string, written: string): boolean {
  return daysBetween(meant.slice(0, 10), written.slice(0, 10)) > 0;
}
