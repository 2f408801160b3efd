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
 * A flight is left and met at half its own fall, g·T/2; the push of an athlete who stood makes that speed within this
 * part: standing at a load off by 2 % makes 7 %, and posture at touchdown 5 %.
 */
const speedPart = 0.15;
/** Nobody comes onto a plate upwards, within this, m/s. */
const stepSpeed = 0.5;
/** Who steps onto a plate takes longer than this to stand on it with both feet; a landing comes to such a load at once. */
const stepSeconds = 0.25;

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
    return speed !== undefined && Math.abs(gained(from, to) - speed) > speedPart * speed;
  };
  const isMetUpwards = (from: number, to: number): boolean =>
    to - from < stepSeconds * rateHz && gained(from, to) < -stepSpeed;
  const next = empty.find(({ start }) => start >= span.end);
  const before = empty.findLast(({ end }) => end <= span.start);
  return (
    (next !== undefined && differs(next, span.end, next.start)) ||
    (before !== undefined && (differs(before, before.end, span.start) || isMetUpwards(before.end, span.start)))
  );
}
