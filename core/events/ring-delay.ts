import type { ForceSignal } from "../trial/force-signal.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { emptyLevel } from "./contact-edge.ts";

/** No plate that rings more slowly than this is sought: a quarter of a period, seconds. */
const longestQuarterSeconds = 0.008;
/** Force this many deviations of the empty plate below its level, and this many newtons, is ringing: nobody pulls. */
const ringingDeviations = 4;
const ringingNewtons = 3;

/**
 * How much too late a take-off may lie because the plate rings, samples: the plate swings upwards as it is released, so
 * that force stays above the threshold for up to half a period and swings below the empty level after it. The half
 * period is twice the way from the event to the bottom of that swing; zero where the force does not swing below.
 */
export function ringDelay(signal: ForceSignal, takeoff: number, flight: SampleSpan): number {
  const { force, rateHz } = signal;
  const empty = emptyLevel(signal, flight);
  const least = empty.newtons - Math.max(ringingDeviations * empty.deviation, ringingNewtons);
  const last = Math.min(flight.end, takeoff + longestQuarterSeconds * rateHz);
  let bottom: number | undefined;
  for (let index = Math.ceil(takeoff); index <= last; index += 1) {
    if (force[index]! < least && (bottom === undefined || force[index]! < force[bottom]!)) bottom = index;
  }
  return bottom === undefined ? 0 : 2 * (bottom - takeoff);
}
