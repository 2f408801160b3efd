import type { CutInput } from "./cut-input.ts";
import type { SampleSpan } from "./sample-span.ts";
import { stoodLoads } from "./stood-loads.ts";

/** True when an empty stretch is a flight: long enough, after a push, and not somebody stepping off. */
export function isFlight(span: SampleSpan, input: CutInput): boolean {
  const { total, rateHz, segments, settings } = input;
  const seconds = (span.end - span.start) / rateHz;
  if (span.start === 0 || seconds < settings.flightMinimumSeconds) return false;
  const from = Math.max(0, span.start - Math.round(settings.flightPushSeconds * rateHz));
  let largest = 0;
  for (let index = from; index < span.start; index += 1) largest = Math.max(largest, total[index]!);
  // Where nobody stands still the lightest athlete's load is all that is known.
  const load = segments.steadyLoad > 0 ? segments.steadyLoad : settings.bodyMassMinimumKg * settings.gravity;
  if (largest <= settings.flightPushLoads * load) return false;
  return (seconds <= settings.flightMaximumSeconds && span.end < total.length) || leavesUpwards(span, input);
}

/**
 * Where no landing follows, the momentum since the last quiet standing tells a jump from a step off the plate: the
 * other foot takes the load over, so the force that is seen would throw the athlete down. True where nobody stood
 * still on the plate before, because then nothing tells.
 */
function leavesUpwards(span: SampleSpan, { total, rateHz, segments, settings }: CutInput): boolean {
  const steppedOn = segments.empty.findLast((empty) => empty.end <= span.start)?.end ?? 0;
  const quiet = segments.quiet.findLast((each) => each.end <= span.start && each.start >= steppedOn);
  const within = { start: steppedOn, end: span.start };
  // Another athlete in the same file stands at another load.
  const stood =
    quiet === undefined
      ? stoodLoads({ rateHz, force: total }, segments, within, settings).at(-1)
      : { span: quiet, newtons: segments.steadyLoad - segments.emptyLevel };
  if (stood === undefined || stood.newtons <= 0) return true;
  const weight = stood.newtons;
  let impulse = 0;
  for (let index = stood.span.end; index < span.start; index += 1) impulse += total[index]! - weight;
  const velocity = (settings.gravity * impulse) / rateHz / weight;
  return velocity > settings.takeoffVelocityMinimum;
}
