import type { Settings } from "../settings/settings.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** Sample from which the push before a flight is looked for. */
export function entryPushStart(contact: SampleSpan, flight: SampleSpan, rateHz: number, settings: Settings): number {
  return Math.max(contact.start, flight.start - Math.round(settings.entryPushSeconds * rateHz));
}
