import type { SampleSpan } from "../trial/sample-span.ts";

/** The push of a jump from the plate is looked for this long before it leaves the plate. */
const entryPushSeconds = 0.3;

/** Sample from which the push before a flight is looked for. */
export function entryPushStart(contact: SampleSpan, flight: SampleSpan, rateHz: number): number {
  return Math.max(contact.start, flight.start - Math.round(entryPushSeconds * rateHz));
}
