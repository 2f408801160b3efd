import type { ForceSignal } from "./force-signal.ts";
import { meanAndDeviation } from "./force-signal.ts";
import { runningMean } from "./segment-load.ts";

/** What a recording varies by where it varies least. */
export interface RestingNoise {
  /** Standard deviation after slow changes are taken away, newtons. */
  readonly newtons: number;
  /** Mains frequency that makes most of it; undefined where none does. */
  readonly humHz: () => number | undefined;
}

/** Hum of the mains: 50 or 60 Hz, as the country has it. */
const mainsHz = [50, 60] as const;
const humFraction = 0.5;
/** Whole periods of either mains frequency, so that the running mean takes nothing of the hum away. */
const slowSeconds = 0.1;
const blockSeconds = 0.2;
/** Of the blocks in order of their deviation the one at this part stands for rest. */
const restQuantile = 0.2;

/** Noise at rest: the deviation of short blocks from their running mean, read where it is small. */
export function restingNoise({ force, rateHz }: ForceSignal): RestingNoise {
  const smooth = runningMean(force, Math.max(2, Math.round(slowSeconds * rateHz)));
  // In the same place: the means are not needed any more.
  const fast = smooth;
  const count = force.length;
  for (let index = 0; index < count; index += 1) fast[index] = force[index]! - smooth[index]!;
  const width = Math.max(4, Math.round(blockSeconds * rateHz));
  const blocks: { readonly start: number; readonly deviation: number }[] = [];
  for (let start = 0; start + width <= fast.length; start += width) {
    blocks.push({ start, deviation: meanAndDeviation(fast, start, start + width).deviation });
  }
  blocks.sort((a, b) => a.deviation - b.deviation);
  const rest = blocks[Math.floor(restQuantile * blocks.length)];
  if (rest === undefined) return { newtons: 0, humHz: () => undefined };
  const { start, deviation } = rest;
  const makesMost = (hertz: number): boolean =>
    lineVariance(fast.subarray(start, start + width), hertz / rateHz) > humFraction * deviation ** 2;
  return { newtons: deviation, humHz: () => mainsHz.find(makesMost) };
}

/** Variance of the sinusoid of a frequency (cycles a sample) in some samples: one line of their Fourier transform. */
function lineVariance(values: Float64Array, cycles: number): number {
  let cosine = 0;
  let sine = 0;
  for (let index = 0; index < values.length; index += 1) {
    cosine += values[index]! * Math.cos(2 * Math.PI * cycles * index);
    sine += values[index]! * Math.sin(2 * Math.PI * cycles * index);
  }
  return (2 * (cosine ** 2 + sine ** 2)) / values.length ** 2;
}
