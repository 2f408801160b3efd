import { type Finding, finding } from "../ground/finding.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Measure } from "../measures/measure.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";

/**
 * A height by impulse that no flight of that length can have: nobody lands much higher than one leaves, nor so low. Then
 * force before take-off was not the athlete's alone, or a part of it is missing, and what rests on it is left out.
 */
export function heightContradiction(
  measures: readonly Measure[],
  { flight }: JumpCut,
  rateHz: number,
  settings: Settings,
): Finding | undefined {
  const measured = (id: MeasureId): number | undefined => measures.find((measure) => measure.id === id)?.value;
  const byImpulse = measured("jumpHeightImpulse");
  const byFlight = measured("jumpHeightFlightTime");
  if (byImpulse === undefined || byFlight === undefined) return undefined;
  const above = byImpulse - byFlight;
  const { heightAboveFlightMetres, heightBelowFlightMetres, heightOffFlightFraction } = settings;
  const most = above > 0 ? heightAboveFlightMetres : heightBelowFlightMetres;
  if (Math.abs(above) <= Math.max(most, heightOffFlightFraction * byFlight)) return undefined;
  const place = { at: "span", fromSeconds: 0, toSeconds: flight.start / rateHz, decimals: 2 } as const;
  return finding("heights-contradict", "warning", { byImpulseMetres: byImpulse, byFlightMetres: byFlight }, { place });
}
