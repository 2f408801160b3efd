/** No setting: a conversion of units. */
const millisecondsPerDay = 86_400_000;

/** Whole days from one ISO date to another; negative where the second lies before the first. */
export function daysBetween(from: string, to: string): number {
  return Math.round((Date.parse(`${to}T00:00:00Z`) - Date.parse(`${from}T00:00:00Z`)) / millisecondsPerDay);
}

/** Whole weeks that have passed between two ISO dates. */
export function weeksBetween(from: string, to: string): number {
  return Math.floor(daysBetween(from, to) / 7);
}

/** The day of a time, as it is written in it: "2026-10-13" of "2026-10-13T09:40". */
export function dayOf(time: string): string {
  return time.slice(0, 10);
}

/** The time of day of a time ("09:40"); "" where it names the day alone. */
export function clockOf(time: string): string {
  return time.slice(11, 16);
}
