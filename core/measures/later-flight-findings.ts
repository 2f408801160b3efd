import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** Flights that follow the landing without quiet standing: a bounce, or further jumps. */
export function laterFlightFindings(cut: JumpCut, rateHz: number, settings: Settings): readonly Finding[] {
  const own = cut.flight.end - cut.flight.start;
  const isBounce = (flight: SampleSpan): boolean => flight.end - flight.start < settings.bounceFraction * own;
  const secondsOf = (flight: SampleSpan): string => ((flight.end - flight.start) / rateHz).toFixed(2);
  const placeOf = (flight: SampleSpan): string => `${(flight.start / rateHz).toFixed(2)} s`;
  const bounces = cut.laterFlights
    .filter(isBounce)
    .map((flight) =>
      proseFinding(
        "bounce-after-landing",
        "note",
        `The athlete leaves the plate again for ${secondsOf(flight)} s after the landing; this is taken as a bounce, not a jump.`,
        "Nothing needs to be done unless the landing is of interest.",
        { where: placeOf(flight) },
      ),
    );
  const jumps = cut.laterFlights.filter((flight) => !isBounce(flight));
  const [next] = jumps;
  if (next === undefined) return bounces;
  const [what, action] =
    jumps.length === 1
      ? [
          `A second flight of ${secondsOf(next)} s follows`,
          "Check that this is one jump; record jumps apart, with quiet standing between them.",
        ]
      : [
          `${jumps.length} more flights of ${jumps.map(secondsOf).join(", ")} s follow`,
          "Call the trial repeated hops if it is a bout of hops; record jumps apart, with quiet standing between them.",
        ];
  const message = `${what} without quiet standing in between; the first one was analysed.`;
  const several = proseFinding("several-flights", "warning", message, action, { where: jumps.map(placeOf).join(", ") });
  return [...bounces, several];
}
