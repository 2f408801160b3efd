import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "./force-signal.ts";
import type { SampleSpan } from "./sample-span.ts";
import type { SteadyLoad } from "./steady-loads.ts";

/** What tells whether a load is stood at: the force, and where the plate is empty. */
export interface FlightsAround {
  readonly signal: ForceSignal;
  /** Stretches in which the plate is empty, in order. */
  readonly empty: readonly SampleSpan[];
  /** Level of the empty plate, newtons. */
  readonly emptyLevel: number;
}

/**
 * True for a steady load that a body in movement carries, and nobody stands at: had the athlete stood still there, with
 * that load as the weight, the force between it and the flight beside it would not make the speed that the flight's
 * length tells. A load held shortly before take-off throws such an athlete downwards; one on which a landing comes to
 * rest for a moment does not stop the fall, or would have to be met upwards. Where the plate was never empty beside it
 * nothing tells, and it is taken as standing.
 */
export function passingLoad(
  { signal, empty, emptyLevel }: FlightsAround,
  { span, newtons }: SteadyLoad,
  settings: Settings,
): boolean {
  const { rateHz } = signal;
  const weight = newtons - emptyLevel;
  const speedOf = (flight: SampleSpan): number | undefined => {
    const seconds = (flight.end - flight.start) / rateHz;
    const isFlight = seconds >= settings.flightMinimumSeconds && seconds <= settings.flightMaximumSeconds;
    const isWhole = flight.start > 0 && flight.end < signal.force.length;
    return isFlight && isWhole ? (settings.gravity * seconds) / 2 : undefined;
  };
  const gained = (from: number, to: number): number => {
    let impulse = 0;
    for (let index = from; index < to; index += 1) impulse += signal.force[index]! - newtons;
    return (settings.gravity * impulse) / rateHz / weight;
  };
  const differs = (flight: SampleSpan, from: number, to: number): boolean => {
    const speed = speedOf(flight);
    return speed !== undefined && Math.abs(gained(from, to) - speed) > settings.passingSpeedFraction * speed;
  };
  const isMetUpwards = (from: number, to: number): boolean =>
    to - from < settings.passingStepSeconds * rateHz && gained(from, to) < -settings.passingStepSpeed;
  const next = empty.find(({ start }) => start >= span.end);
  const before = empty.findLast(({ end }) => end <= span.start);
  return (
    (next !== undefined && differs(next, span.end, next.start)) ||
    (before !== undefined && (differs(before, before.end, span.start) || isMetUpwards(before.end, span.start)))
  );
}
