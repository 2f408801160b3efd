import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import { firstPeakTimes } from "./landing.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** What is taken from a trial where the limbs' first peaks differ: each limb's own rate; that of both together stays. */
export function isLimbLoadingRate({ id, side }: Pick<Measure, "id" | "side">): boolean {
  return id === "loadingRate" && side !== "both";
}

/**
 * Where one limb's force has an early peak that the other's lacks, their loading rates are slopes to different peaks
 * and no pair (METHODS §8). Times from each limb's own touchdown tell: the same peak does not come
 * `firstPeaksApartFactor` times later on one side.
 */
export function firstPeakFindings(context: MeasureContext, settings: Settings): readonly Finding[] {
  const times = firstPeakTimes(context, settings).toSorted((a, b) => a.seconds - b.seconds);
  const [early, late] = times;
  if (early === undefined || late === undefined) return [];
  if (!(late.seconds > settings.firstPeaksApartFactor * early.seconds)) return [];
  const figures = { earlySeconds: early.seconds, lateSeconds: late.seconds };
  return [finding("first-peaks-differ", "note", figures, { removes: ["loadingRate"] })];
}
