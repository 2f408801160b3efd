import { words } from "../words/words.ts";

const prose = words.screens.commonWords;

/** Today on the calendar of this computer, as an ISO date. */
export function today(now = new Date()): string {
  const part = (value: number) => String(value).padStart(2, "0");
  return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
}

/** The date some whole months before another one; the last day of a shorter month where the day is missing. */
export function monthsBefore(date: string, months: number): string {
  const [year = 0, month = 1, day = 1] = date.split("-").map(Number);
  const monthsSinceZero = year * 12 + (month - 1) - months;
  const [toYear, toMonth] = [Math.floor(monthsSinceZero / 12), (((monthsSinceZero % 12) + 12) % 12) + 1];
  const lastDay = new Date(Date.UTC(toYear, toMonth, 0)).getUTCDate();
  const part = (value: number, width = 2) => String(value).padStart(width, "0");
  return `${part(toYear, 4)}-${part(toMonth)}-${part(Math.min(day, lastDay))}`;
}

/** "5.5 months ago", "3 weeks ago", "today"; "in 2 months" for what lies ahead. */
export function sinceWords(date: string, until: string): string {
  const days = daysBetween(date, until);
  if (days === 0) return prose.today;
  const words = spanWords(Math.abs(days), days > 0 ? [date, until] : [until, date]);
  return days > 0 ? prose.ago(words) : prose.ahead(words);
}

function spanWords(days: number, span: readonly [string, string]): string {
  if (days < 14) return prose.days(days);
  const months = monthsBetween(span);
  if (months < 2) return prose.weeks(Math.floor(days / 7));
  const nearest = Math.round(2 * months) / 2;
  return nearest < 36 ? prose.months(nearest) : prose.years(Math.floor(nearest / 12));
}

/** Months of the calendar, and the days left over as a part of the month they lie in. */
function monthsBetween([from, to]: readonly [string, string]): number {
  let months = 0;
  while (monthsBefore(to, months + 1) >= from) months += 1;
  const [begin, end] = [monthsBefore(to, months + 1), monthsBefore(to, months)];
  return months + daysBetween(from, end) / daysBetween(begin, end);
}

function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(to) - Date.parse(from)) / 86_400_000);
}
