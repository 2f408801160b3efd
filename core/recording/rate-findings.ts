import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";

/** Warns of a sampling rate that costs accuracy, or leaves only weight and mass; the analysis fills in what it removes. */
export function rateFindings(rateHz: number | undefined, settings: Settings): Finding[] {
  if (rateHz === undefined || rateHz >= settings.rateWarnHz) return [];
  const { rateRefuseHz, rateWarnHz } = settings;
  return rateHz < rateRefuseHz
    ? [finding("rate-low/weight-alone", "warning", { rateHz, leastHz: rateRefuseHz })]
    : [finding("rate-low/less-accurate", "warning", { rateHz, wantedHz: rateWarnHz })];
}
