import type { Settings } from "../settings/settings.ts";
import { forceAt } from "../trial/force-signal.ts";
import type { JumpMotion } from "./jump-events.ts";
import { velocityNoise } from "./velocity-noise.ts";

/**
 * Standard deviation of the place where Brownian motion plus a parabola t² is least (Groeneboom and Wellner 2001). No
 * setting: a mathematical constant.
 */
const leastOfParabola = 0.5134;

/**
 * What noise leaves in the end of unweighting, samples. It is the most negative velocity: the parabola s·t²/2 of the
 * velocity, with s the slope of force through weight, beside the integral of white noise, which grows with σ·√(dt·t), is
 * least within (2σ·√dt/s)^⅔ of its own bottom, unless that is less than half a sample, which then is the right one. On
 * the line between two samples noise shifts the crossing by √⅔·σ/s, and whatever is not white by its own size over s.
 * @param white standard deviation of white noise, newtons
 * @param point standard uncertainty of one sample's force, newtons: white noise, hum, ringing and the plate's zero
 */
export function endOfUnweightingNoise(
  { motion }: JumpMotion,
  sample: number,
  white: number,
  point: number,
  settings: Settings,
): number {
  const { signal } = motion;
  const { rateHz } = signal;
  const half = (settings.turningSlopeSeconds / 2) * rateHz;
  const slope = (forceAt(signal, sample + half) - forceAt(signal, sample - half)) / settings.turningSlopeSeconds;
  const most = settings.turningMostSeconds * rateHz;
  if (slope <= 0) return most;
  const hidden = leastOfParabola * ((2 * white) / (Math.sqrt(rateHz) * slope)) ** (2 / 3);
  const onLine = (Math.sqrt(2 / 3) * white) / slope;
  const steady = Math.sqrt(Math.max(0, point ** 2 - white ** 2)) / slope;
  return Math.min(most, Math.hypot(hidden * rateHz < 0.5 ? onLine : Math.max(hidden, onLine), steady) * rateHz);
}

/** What noise leaves in the lowest position or the landing end, samples: that of velocity there over acceleration. */
export function restNoise(jump: JumpMotion, sample: number, noiseNewtons: number, settings: Settings): number {
  const { signal, weightNewtons, gravity } = jump.motion;
  const { rateHz } = signal;
  const acceleration = (forceAt(signal, sample) / weightNewtons - 1) * gravity;
  const most = settings.turningMostSeconds * rateHz;
  return acceleration <= 0 ? most : Math.min(most, (velocityNoise(jump, noiseNewtons, sample) / acceleration) * rateHz);
}
