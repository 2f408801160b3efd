import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "./force-signal.ts";

/** What a recording varies by where it varies least. */
export interface RestingNoise {
  /** Standard deviation beside slow changes, newtons. */
  readonly newtons: number;
  /** Mains frequency that makes most of it; undefined where none does. */
  readonly humHz: () => number | undefined;
}

/** Hum of the mains: 50 or 60 Hz, as the country has it. No setting: there are no others. */
const mainsHz = [50, 60] as const;

/** Noise at rest: the deviation of short blocks from their parabola of least squares, read where it is small. */
export function restingNoise({ force, rateHz }: ForceSignal, settings: Settings): RestingNoise {
  const width = Math.max(4, Math.round(settings.restingBlockSeconds * rateHz));
  const apart = Math.max(1, Math.round(settings.restingBlocksApart * width));
  const blocks: { readonly start: number; readonly deviation: number }[] = [];
  for (let start = 0; start + width <= force.length; start += apart) {
    blocks.push({ start, deviation: besideParabola(force, start, width).deviation });
  }
  blocks.sort((a, b) => a.deviation - b.deviation);
  const rest = blocks[Math.floor(settings.restingQuantile * blocks.length)];
  if (rest === undefined) return { newtons: 0, humHz: () => undefined };
  const { start, deviation } = rest;
  const makesMost = (hertz: number): boolean =>
    lineVariance(besideParabola(force, start, width).rest(), hertz / rateHz) >
    settings.restingHumFraction * deviation ** 2;
  return { newtons: deviation, humHz: () => mainsHz.find(makesMost) };
}

/**
 * What a block of force has beside its parabola of least squares: over distances from the middle the straight line and
 * the bend are orthogonal, so each is a sum of its own.
 */
function besideParabola(force: Float64Array, start: number, width: number) {
  const middle = (width - 1) / 2;
  const level = force[start + Math.floor(middle)]!;
  // Mean of the squared distance, which makes the bend orthogonal to the mean.
  const spread = (width * width - 1) / 12;
  let sum = 0;
  let lean = 0;
  let bend = 0;
  let squares = 0;
  let ofBend = 0;
  for (let index = 0; index < width; index += 1) {
    const value = force[start + index]! - level;
    const distance = index - middle;
    const bent = distance * distance - spread;
    sum += value;
    lean += distance * value;
    bend += bent * value;
    squares += value * value;
    ofBend += bent * bent;
  }
  const left = squares - (sum * sum) / width - (lean * lean) / (width * spread) - (bend * bend) / ofBend;
  const rest = (): Float64Array =>
    Float64Array.from({ length: width }, (_, index) => {
      const distance = index - middle;
      const line = sum / width + (lean / (width * spread)) * distance;
      return force[start + index]! - level - line - (bend / ofBend) * (distance * distance - spread);
    });
  return { deviation: Math.sqrt(Math.max(0, left) / (width - 3)), rest };
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
