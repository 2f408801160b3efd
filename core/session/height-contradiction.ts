import { type Finding, proseFinding } from "../ground/finding.ts";
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
  const why =
    above > 0
      ? "nobody lands that much higher than one leaves, so the weight is too small (a hand on a rail, a foot beside the plate, another person) or force was added before take-off"
      : "no landing is that low, so the weight is too large or a part of the force before take-off is missing";
  return proseFinding(
    "heights-contradict",
    "warning",
    `Jump height is ${(100 * byImpulse).toFixed(1)} cm by impulse and ${(100 * byFlight).toFixed(1)} cm by flight time: ${why}. What rests on weight or velocity is left out.`,
    "Look at the standing before the jump and at the force up to take-off; exclude the trial, or repeat it.",
    { where: `0.00 s to ${(flight.start / rateHz).toFixed(2)} s` },
  );
}
