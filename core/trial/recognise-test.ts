import type { BeforeAttempt, NotOffered, RecognisedTest } from "../ground/recognised-test.ts";
import { kindOfTrace } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";

/**
 * Reads the test from the coarse segmentation of one attempt: what the plate carried before it, how long the contact
 * and the flights last, whether force dips before the push. An offer with its reason, never a decision (METHODS §6).
 */
export function recogniseTest(prepared: PreparedRecording, cut: JumpCut, settings: Settings): RecognisedTest {
  const { rateHz } = prepared.total;
  const secondsOf = (span: SampleSpan): number => (span.end - span.start) / rateHz;
  const before: BeforeAttempt = cut.kind === "standing" ? "standing on the plate" : "empty plate";
  if (cut.kind === "landing") return { test: kindOfTrace("dropAndLand"), trace: { seen: "impact", before } };
  if (cut.laterFlights.length >= settings.recognisedHopFlights) {
    return { test: kindOfTrace("hops"), trace: { seen: "flights", before, flights: cut.laterFlights.length + 1 } };
  }
  const flightSeconds = secondsOf(cut.flight);
  if (cut.kind === "drop") {
    const trace = { seen: "contact", before, contactSeconds: secondsOf(cut.contact), flightSeconds } as const;
    return { test: kindOfTrace("dropAndJump"), trace };
  }
  const least = leastLoadFraction(prepared, cut, settings);
  return least < 1 - settings.squatDipFraction
    ? { test: kindOfTrace("dipAndJump"), trace: { seen: "dip", before, weightFraction: least, flightSeconds } }
    : { test: kindOfTrace("holdAndJump"), trace: { seen: "no dip", before, flightSeconds } };
}

/**
 * Says where a flight is too long to offer any test by. Where somebody stood still before it and did not come back
 * onto the plate, the momentum of the push has told the jump, and how long the plate stays empty tells nothing.
 */
export function flightBeyondPeople(
  { kind, flight, laterFlights, landed, quietBefore }: JumpCut,
  rateHz: number,
  settings: Settings,
): NotOffered | undefined {
  if (kind === "landing") return undefined;
  const most = settings.recognisedFlightSeconds;
  const told = !landed && quietBefore.length > 0;
  const flights = [...(told ? [] : [flight]), ...laterFlights];
  if (flights.every(({ start, end }) => end - start <= most * rateHz)) return undefined;
  const height = (settings.gravity * most ** 2) / 8;
  return { against: { why: "empty too long", mostSeconds: most, heightMetres: height } };
}

/**
 * Least force between the last quiet standing and the peak of the push, as a part of the standing load. A stretch too
 * short to weigh by is a pause in the movement, not standing or a hold.
 */
export function leastLoadFraction(
  { total, segments }: Pick<PreparedRecording, "total" | "segments">,
  cut: JumpCut,
  settings: Settings,
): number {
  const load = segments.steadyLoad - segments.emptyLevel;
  const least = settings.weighingShortSeconds * total.rateHz;
  const stood = cut.quietBefore.findLast((quiet) => quiet.end - quiet.start >= least) ?? cut.quietBefore[0];
  const start = stood?.end ?? cut.contact.start;
  const { flight } = cut;
  if (load <= 0 || flight.start <= start) return 1;
  const push = total.force.subarray(start, flight.start);
  const smooth = runningMean(push, Math.max(2, Math.round(settings.quietBlockSeconds * total.rateHz)));
  let peak = 0;
  for (let index = 1; index < smooth.length; index += 1) if (smooth[index]! > smooth[peak]!) peak = index;
  let lowest = Number.POSITIVE_INFINITY;
  for (let index = 0; index <= peak; index += 1) lowest = Math.min(lowest, smooth[index]!);
  return lowest / load;
}
