import type { Settings } from "../settings/settings.ts";
import { type ForceSignal, maximumForce } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { contactEdge, type EmptyLevel } from "./contact-edge.ts";

/** What both ends of a contact are found with. */
export interface EdgeSearch {
  readonly signal: ForceSignal;
  /** The empty plate that thresholds are counted from. */
  readonly empty: EmptyLevel;
  readonly weightNewtons: number;
  readonly settings: Settings;
}

/** The instant the plate is left for `flight`, searched forwards from a sample inside the contact. */
export function leaveEdge(search: EdgeSearch, from: number, flight: SampleSpan): number | undefined {
  const { signal, empty, weightNewtons, settings } = search;
  return contactEdge(signal, from, middleOf(flight), 1, empty, weightNewtons, settings);
}

/**
 * The instant the plate is touched after `flight`, searched backwards from the peak of the contact that follows.
 * @param contactEnd sample at which that contact ends, so that the peak of a later one is not taken for it
 */
export function touchEdge(search: EdgeSearch, flight: SampleSpan, contactEnd: number): number | undefined {
  const { signal, empty, weightNewtons, settings } = search;
  const peak = contactPeak(signal, { start: flight.end, end: contactEnd }, settings);
  return contactEdge(signal, peak, middleOf(flight), -1, empty, weightNewtons, settings);
}

/** Sample of the largest force in the first part of a contact. */
export function contactPeak(signal: ForceSignal, contact: SampleSpan, settings: Settings): number {
  const latest = Math.min(
    signal.force.length - 1,
    contact.end,
    contact.start + Math.round(settings.landingPeakSeconds * signal.rateHz),
  );
  return Math.round(maximumForce(signal, Math.min(contact.start, latest), latest).sample);
}

function middleOf(flight: SampleSpan): number {
  return Math.floor((flight.start + flight.end) / 2);
}
