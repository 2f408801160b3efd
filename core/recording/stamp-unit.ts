import type { Settings } from "../settings/settings.ts";
import { agree } from "./stated-rate.ts";
import type { StampColumn } from "./step-checks.ts";
import { secondsIn, type TimeUnit } from "./time-units.ts";

const units: readonly TimeUnit[] = ["s", "ms", "µs"];

/** The unit of stamps that say none, where only one gives a rate a force plate can have; stated rates decide. */
export function guessStampUnit(
  { saysTime, writtenUnit }: StampColumn,
  step: number,
  statedHz: readonly number[],
  settings: Settings,
): TimeUnit | "index" | "unknown" {
  const rateIn = (unit: TimeUnit): number => 1 / (step * secondsIn[unit]);
  for (const stated of statedHz) {
    const agreeing = units.find((unit) => agree(rateIn(unit), stated, settings));
    if (agreeing !== undefined) return agreeing;
  }
  if (statedHz.length > 0) return step === 1 && !saysTime ? "index" : "unknown";
  if (writtenUnit !== "") return "unknown";
  const plausible = units.filter((unit) => isPlausibleRate(rateIn(unit), settings));
  const [unit] = plausible;
  if (unit === undefined || plausible.length > 1) return "unknown";
  // Whole numbers from row to row may be a count; a name that says time rules that out, except for the step 1.
  return unit === "s" || (saysTime && step !== 1) ? unit : "unknown";
}

/** True for a rate that a force recording can have. */
export function isPlausibleRate(rateHz: number, settings: Settings): boolean {
  return rateHz >= settings.rateLeastHz && rateHz <= settings.rateMostHz;
}
