import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** Flights that follow the landing without quiet standing: a bounce, or further jumps. */
export function laterFlightFindings(cut: JumpCut, rateHz: number, settings: Settings): readonly Finding[] {
  const own = cut.flight.end - cut.flight.start;
  const isBounce = (flight: SampleSpan): boolean => flight.end - flight.start < settings.bounceFraction * own;
  const secondsOf = (flight: SampleSpan): number => (flight.end - flight.start) / rateHz;
  const bounces = cut.laterFlights
    .filter(isBounce)
    .map((flight) =>
      finding(
        "bounce-after-landing",
        "note",
        { seconds: secondsOf(flight) },
        { place: { at: "time", seconds: flight.start / rateHz, decimals: 2 } },
      ),
    );
  const jumps = cut.laterFlights.filter((flight) => !isBounce(flight));
  if (jumps.length === 0) return bounces;
  const several = finding(
    "several-flights",
    "warning",
    { flightSeconds: jumps.map(secondsOf) },
    { place: { at: "times", seconds: jumps.map(({ start }) => start / rateHz), decimals: 2 } },
  );
  return [...bounces, several];
}
