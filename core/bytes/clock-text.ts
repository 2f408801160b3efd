/** A stamp of wall-clock time, taken apart. */
export interface ClockStamp {
  /** Days since 1970-01-01; undefined where the stamp is a time of day alone. */
  readonly day?: number;
  /** Since midnight, as written. */
  readonly seconds: number;
  /** Minutes east of UTC; undefined where the stamp does not say. */
  readonly offsetMinutes?: number;
}

const date = String.raw`(?:(\d{4})-(\d{2})-(\d{2})|(\d{1,2})\.(\d{1,2})\.(\d{4}))`;
const time = String.raw`(\d{1,2}):([0-5]\d):([0-5]\d)(?:[.,](\d+))?`;
const offset = String.raw`(Z|[+-]\d{2}:?\d{2})?`;
const dateAndTime = new RegExp(`^${date}(?:[T ]|,? +)${time} ?${offset}$`);
const timeOfDay = new RegExp(`^${time}$`);
const minutesAndSeconds = /^(\d{1,3}):([0-5]\d)[.,](\d+)$/;

/**
 * Reads `10:15:03.125`, `2026-01-17T10:15:03.125Z` (ISO 8601), `17.01.2026 10:15:03,125` and, as a running time, `01:03.125`.
 * Undefined for anything else: dates with slashes do not say which number is the month.
 */
export function parseClockText(cell: string): ClockStamp | undefined {
  const text = cell.trim();
  if (text.length < 6 || text.length > 40 || !text.includes(":")) return undefined;
  const clock = timeOfDay.exec(text);
  if (clock !== null) {
    const seconds = secondsOf(clock[1]!, clock[2]!, clock[3]!, clock[4]);
    return seconds < 86_400 ? { seconds } : undefined;
  }
  const running = minutesAndSeconds.exec(text);
  if (running !== null) return { seconds: secondsOf("0", running[1]!, running[2]!, running[3]) };
  const stamp = dateAndTime.exec(text);
  if (stamp === null) return undefined;
  const [, year, month, monthDay, otherDay, otherMonth, otherYear, hours, minutes, whole, decimals, zone] = stamp;
  const day = dayNumber(Number(year ?? otherYear), Number(month ?? otherMonth), Number(monthDay ?? otherDay));
  const seconds = secondsOf(hours!, minutes!, whole!, decimals);
  if (day === undefined || seconds >= 86_400) return undefined;
  return { day, seconds, ...(zone === undefined ? {} : { offsetMinutes: offsetOf(zone) }) };
}

function secondsOf(hours: string, minutes: string, whole: string, decimals = ""): number {
  return Number(hours) * 3600 + Number(minutes) * 60 + Number(`${whole}.${decimals}`);
}

function offsetOf(zone: string): number {
  if (zone === "Z") return 0;
  const minutes = Number(zone.slice(1, 3)) * 60 + Number(zone.slice(-2));
  return zone.startsWith("-") ? -minutes : minutes;
}

/** Days since 1970-01-01 in the Gregorian calendar, or undefined where there is no such date. */
function dayNumber(year: number, month: number, day: number): number | undefined {
  const milliseconds = Date.UTC(year, month - 1, day);
  const back = new Date(milliseconds);
  const exists = back.getUTCFullYear() === year && back.getUTCMonth() === month - 1 && back.getUTCDate() === day;
  return exists ? milliseconds / 86_400_000 : undefined;
}

/** `2026-01-17` of a day number. */
export function isoDate(day: number): string {
  return new Date(day * 86_400_000).toISOString().slice(0, 10);
}
