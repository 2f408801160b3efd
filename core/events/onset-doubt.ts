import type { Settings } from "../settings/settings.ts";
import type { JumpMotion } from "./jump-events.ts";

/**
 * A force that grows with the square of time needs this many times as long to the band as from there to twice it. No
 * setting: an identity of the square.
 */
const growth = 1 / (Math.SQRT2 - 1);

/**
 * Adds how much too late the onset may lie because the movement begins gently: force leaves the band around weight late
 * where it grows slowly, or where noise makes the band wide. From the time it then takes to twice the band follows how
 * long it took to the band, as a rectangle beyond the time the onset is placed back by.
 */
export function withOnsetDoubt(jump: JumpMotion, settings: Settings): JumpMotion {
  const { onset, endOfUnweighting, takeoff } = jump.events;
  const end = endOfUnweighting ?? takeoff;
  if (onset === undefined || end === undefined) return jump;
  const { signal, weightNewtons } = jump.motion;
  const { force, rateHz } = signal;
  const half = Math.round((settings.onsetDoubtMeanSeconds / 2) * rateHz);
  const away = (centre: number): number => {
    const first = Math.max(0, centre - half);
    const last = Math.min(force.length - 1, centre + half);
    let sum = 0;
    for (let index = first; index <= last; index += 1) sum += force[index]!;
    return Math.abs(sum / (last - first + 1) - weightNewtons);
  };
  const back = settings.onsetBackSeconds * rateHz;
  const left = Math.round(onset + back);
  const band = away(left);
  let twice = left;
  while (twice < end && away(twice) < 2 * band) twice += 1;
  const late = Math.min(settings.onsetDoubtMostSeconds * rateHz, Math.max(0, growth * (twice - left) - back));
  return { ...jump, onsetDoubt: late / Math.sqrt(3) };
}
