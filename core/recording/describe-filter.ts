import type { Settings } from "../settings/settings.ts";
import { canFilter } from "./filter-design.ts";

/** The display filter in words, as it acts at this sampling rate. */
export function describeFilter(settings: Settings, rateHz: number): string {
  const cutoff = `${settings.filterHz} Hz`;
  if (!canFilter(rateHz, settings.filterHz)) {
    return `not filtered: a cut-off of ${cutoff} cannot be realised at ${rateHz} Hz, where it lies at or above half the sampling rate`;
  }
  return (
    `zero-lag Butterworth low-pass, one second-order section forward and backward (effective order 4), ` +
    `${cutoff} where both passes together are 3 dB down (corrected on the warped frequency for two passes), ` +
    `ends continued by odd reflection over ${settings.filterPaddingSamples} samples with settled initial state`
  );
}
