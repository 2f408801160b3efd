import type { Settings } from "../settings.ts";
import { forceAt } from "../trial/force-signal.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** A force that grows with the power 2.5 of time needs this many times as long to the band as from there to twice it. */
const growth = 1 / (2 ** (1 / 2.5) - 1);
/** No onset is doubted by more than this, seconds. */
const mostSeconds = 0.1;

/**
 * How much too late the onset may lie because the movement begins gently, samples: force leaves the band around weight
 * late where it grows slowly, or where noise makes the band wide. From the time it then takes to twice the band follows
 * how long it took to the band, as a rectangle beyond the time the onset is placed back by.
 */
export function onsetDoubt({ jump }: MeasureContext, settings: Settings): number {
  const { motion, events } = jump;
  const { signal, weightNewtons } = motion;
  const { onset, endOfUnweighting, takeoff } = events;
  const end = endOfUnweighting ?? takeoff;
  if (onset === undefined || end === undefined) return 0;
  const back = settings.onsetBackSeconds * signal.rateHz;
  const left = onset + back;
  const band = Math.abs(forceAt(signal, left) - weightNewtons);
  let twice = Math.ceil(left);
  while (twice < end && Math.abs(signal.force[twice]! - weightNewtons) < 2 * band) twice += 1;
  const most = mostSeconds * signal.rateHz;
  return Math.min(most, Math.max(0, growth * (twice - left) - back)) / Math.sqrt(3);
}
