import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";

/** Warns of a sampling rate that costs accuracy, or leaves only weight and mass; the analysis fills in what it removes. */
export function rateFindings(rateHz: number | undefined, settings: Settings): Finding[] {
  if (rateHz === undefined || rateHz >= settings.rateWarnHz) return [];
  const rate = `${Number(rateHz.toPrecision(7))} Hz`;
  const message =
    rateHz < settings.rateRefuseHz
      ? `At ${rate} only body weight and mass can be measured; events need at least ${settings.rateRefuseHz} Hz.`
      : `At ${rate} events and heights lose accuracy; ${settings.rateWarnHz} Hz or more is wanted.`;
  return [proseFinding("rate-low", "warning", message, "Record at 1000 Hz.")];
}
