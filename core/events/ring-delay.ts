import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { contactThreshold, emptyLevel } from "./contact-edge.ts";

/**
 * How much too late a take-off may lie because the plate rings, samples: the plate swings upwards as it is released, so
 * that force stays above the threshold for up to half a period and swings below the empty level after it. The half
 * period is twice the way from the last loaded sample to the bottom of that swing; zero where the force does not swing below.
 */
export function ringDelay(signal: ForceSignal, takeoff: number, flight: SampleSpan, settings: Settings): number {
  const { force, rateHz } = signal;
  const empty = emptyLevel(signal, flight, settings);
  const count = Math.max(1, Math.round(settings.ringMeanSeconds * rateHz));
  let lowest =
    empty.newtons - Math.max((settings.ringDeviations * empty.deviation) / Math.sqrt(count), settings.ringNewtons);
  const last = Math.min(flight.end - count, takeoff + settings.ringQuarterSeconds * rateHz);
  let bottom: number | undefined;
  for (let index = Math.ceil(takeoff); index <= last; index += 1) {
    let sum = 0;
    for (let after = 0; after < count; after += 1) sum += force[index + after]!;
    if (sum / count >= lowest) continue;
    lowest = sum / count;
    bottom = index + (count - 1) / 2;
  }
  if (bottom === undefined) return 0;
  // The event was carried outwards from there.
  const threshold = contactThreshold(empty, settings);
  const first = takeoff - settings.contactCarrySeconds * rateHz;
  let loaded = Math.floor(takeoff);
  while (loaded > first && force[loaded]! < threshold) loaded -= 1;
  return 2 * (bottom - loaded);
}
