import { kindOfTrace, type TestKind } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import { runningMean } from "./segment-load.ts";

/** What a trace looks like by itself. */
export interface RecognisedTest {
  readonly test: TestKind;
  /** What was seen, in words that complete "looks like a … : …". */
  readonly reason: string;
}

/** Why a trace is offered as no test, in words that complete "the trace is offered as none: …". */
export interface NotOffered {
  readonly test?: undefined;
  readonly reason: string;
}

/**
 * Reads the test from the coarse segmentation of one attempt: what the plate carried before it, how long the contact
 * and the flights last, whether force dips before the push. An offer with its reason, never a decision (METHODS §6).
 */
export function recogniseTest(prepared: PreparedRecording, cut: JumpCut, settings: Settings): RecognisedTest {
  const { rateHz } = prepared.total;
  const seconds = (span: { readonly start: number; readonly end: number }): string =>
    `${((span.end - span.start) / rateHz).toFixed(2)} s`;
  const before = cut.kind === "standing" ? "standing on the plate" : "empty plate";
  if (cut.kind === "landing") {
    return { test: kindOfTrace("dropAndLand"), reason: `${before}, an impact, no flight after it` };
  }
  if (cut.laterFlights.length >= settings.recognisedHopFlights) {
    return {
      test: kindOfTrace("hops"),
      reason: `${before}, ${cut.laterFlights.length + 1} flights without standing between`,
    };
  }
  if (cut.kind === "drop") {
    const reason = `${before}, contact ${seconds(cut.contact)}, flight ${seconds(cut.flight)}`;
    return { test: kindOfTrace("dropAndJump"), reason };
  }
  const least = leastLoadFraction(prepared, cut, settings);
  const percent = Math.round(100 * least);
  return least < 1 - settings.squatDipFraction
    ? {
        test: kindOfTrace("dipAndJump"),
        reason: `${before}, a dip to ${percent} % of body weight before the push, flight ${seconds(cut.flight)}`,
      }
    : { test: kindOfTrace("holdAndJump"), reason: `${before}, no dip before the push, flight ${seconds(cut.flight)}` };
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
  return {
    reason: `the plate is empty for more than ${most.toFixed(1)} s after a push, longer than people fly (${most.toFixed(1)} s is a height of ${height.toFixed(2)} m)`,
  };
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
