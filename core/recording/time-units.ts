/** What stamps may be counted in. */
export type TimeUnit = "s" | "ms" | "µs";

/** Seconds in one of each unit. */
export const secondsIn: Readonly<Record<TimeUnit, number>> = { s: 1, ms: 1e-3, µs: 1e-6 };

/** The time unit a header means, or undefined where it is none. */
export function timeUnitOf(text: string): TimeUnit | undefined {
  const unit = text.trim().toLowerCase().replace("μ", "µ");
  const is = (list: string): boolean => list.split(" ").includes(unit);
  if (is("s sec secs second seconds sek sekunden secondes segundos secondi segundo sekund")) return "s";
  if (is("ms msec msecs millisecond milliseconds millisekunden millisecondes milisegundos")) return "ms";
  if (is("µs us usec µsec microsecond microseconds mikrosekunden microsecondes microsegundos")) return "µs";
  return undefined;
}
