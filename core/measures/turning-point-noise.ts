import { forceAt } from "../trial/force-signal.ts";
import { totalNoise } from "./force-noise.ts";
import type { MeasureContext } from "./raw-measure.ts";
import { velocityNoise } from "./velocity-noise.ts";

/** The slope of force where it returns to weight is read over this long, seconds, so that noise does not make it. */
const slopeSeconds = 0.02;
/** No turning point is looked for further away than this, seconds. */
const mostSeconds = 0.02;

/**
 * What noise leaves in the end of unweighting, samples. It is the most negative velocity: where force rises through
 * weight with slope s, noise of deviation σ shifts it by σ/s; and the integral of white noise, which grows with the
 * root of time, hides the parabola of the velocity for a time τ with 2σ·√(dt·τ) = s·τ²/2.
 */
export function endOfUnweightingNoise(context: MeasureContext, sample: number): number {
  const { signal } = context.jump.motion;
  const { rateHz } = signal;
  const half = (slopeSeconds / 2) * rateHz;
  const slope = (forceAt(signal, sample + half) - forceAt(signal, sample - half)) / slopeSeconds;
  const most = mostSeconds * rateHz;
  if (slope <= 0) return most;
  const { white, point } = totalNoise(context);
  const hidden = ((4 * white) / (Math.sqrt(rateHz) * slope)) ** (2 / 3);
  return Math.min(most, Math.hypot(hidden, point / slope) * rateHz);
}

/** What noise leaves in the lowest position or the landing end, samples: that of velocity there over acceleration. */
export function restNoise(context: MeasureContext, sample: number): number {
  const { motion } = context.jump;
  const { signal, weightNewtons, gravity } = motion;
  const { rateHz } = signal;
  const acceleration = (forceAt(signal, sample) / weightNewtons - 1) * gravity;
  const most = mostSeconds * rateHz;
  return acceleration <= 0 ? most : Math.min(most, (velocityNoise(context, sample) / acceleration) * rateHz);
}
