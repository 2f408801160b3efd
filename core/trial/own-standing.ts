import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "./cut-trials.ts";
import type { ForceSignal } from "./force-signal.ts";
import type { LoadSegments } from "./segment-load.ts";
import type { SteadyLoad } from "./steady-loads.ts";
import { stoodLoads } from "./stood-loads.ts";

/**
 * A jump whose own standing is at another load than the recording's steadiest: another athlete in one file, somebody who
 * steps on later, a hand on a rail. Its quiet standing is found at its own level, so that it is weighed there.
 */
export function withOwnStanding(
  cut: JumpCut,
  signal: ForceSignal,
  segments: Pick<LoadSegments, "empty">,
  settings: Settings,
): JumpCut {
  if (cut.kind !== "standing") return cut;
  if (cut.quietBefore.length > 0) return withStandingAfter(cut, signal, segments, settings);
  const from = Math.max(cut.span.start, cut.contact.start);
  const before = stoodLoads(signal, segments, { start: from, end: cut.flight.start }, settings);
  const last = before.at(-1);
  if (last === undefined) return withStandingAfter(cut, signal, segments, settings);
  const near = (each: SteadyLoad): boolean => Math.abs(each.newtons / last.newtons - 1) <= settings.quietBandFraction;
  const own = { ...cut, quietBefore: before.filter(near).map(({ span }) => span) };
  return withStandingAfter(own, signal, segments, settings);
}

/** The same of the standing after it, where it is at no load near the recording's steadiest. */
function withStandingAfter(
  cut: JumpCut,
  signal: ForceSignal,
  segments: Pick<LoadSegments, "empty">,
  settings: Settings,
): JumpCut {
  const landed = cut.laterFlights.at(-1)?.end ?? cut.flight.end;
  const stood = cut.quietAfter.end - cut.quietAfter.start >= settings.quietSecondsAfter * signal.rateHz;
  if (stood || !cut.landed || landed >= cut.span.end) return cut;
  const [after] = stoodLoads(signal, segments, { start: landed, end: cut.lastLanding.end }, settings);
  return after === undefined ? cut : { ...cut, quietAfter: after.span };
}
