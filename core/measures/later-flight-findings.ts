import { type Finding, finding } from "../finding.ts";
import type { Settings } from "../settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";

/** Flights that follow the landing without quiet standing: a bounce, or further jumps. */
export function laterFlightFindings(cut: JumpCut, rateHz: number, settings: Settings): readonly Finding[] {
  const own = cut.flight.end - cut.flight.start;
  return cut.laterFlights.map((flight) => {
    const seconds = ((flight.end - flight.start) / rateHz).toFixed(2);
    const where = `${(flight.start / rateHz).toFixed(2)} s`;
    const bounce = flight.end - flight.start < settings.bounceFraction * own;
    return bounce
      ? finding(
          "bounce-after-landing",
          "note",
          `The athlete leaves the plate again for ${seconds} s after the landing; this is taken as a bounce, not a jump.`,
          "Nothing needs to be done unless the landing is of interest.",
          { where },
        )
      : finding(
          "several-flights",
          "warning",
          `A second flight of ${seconds} s follows without quiet standing in between; the first one was analysed.`,
          "Check that this is one jump; record jumps apart, with quiet standing between them.",
          { where },
        );
  });
}
