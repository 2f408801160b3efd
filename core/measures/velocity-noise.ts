import type { Settings } from "../settings.ts";
import { integralNoise, type MeasureContext } from "./raw-measure.ts";

/** What plate noise leaves in the velocity at a sample, integrated from where velocity is known; m/s. */
export function velocityNoise({ jump, noiseNewtons }: MeasureContext, sample: number): number {
  const { motion, anchor, events } = jump;
  const massKg = motion.weightNewtons / motion.gravity;
  const from = knownFrom();
  return integralNoise(noiseNewtons, Math.abs(sample - from), motion.signal.rateHz) / massKg;

  function knownFrom(): number {
    if (anchor.kind === "still") return anchor.window.start < sample ? anchor.window.start : anchor.window.end;
    return (anchor.kind === "flight" ? events.takeoff : motion.startSample) ?? sample;
  }
}

/**
 * What noise and sway leave in a position counted from the onset or from the quiet standing after a landing, metres:
 * noise already in the velocity there, times the time; white noise integrated twice, σ·√(dt·T³/3); and how far from its
 * mean standing the body swayed there.
 */
export function positionNoise(context: MeasureContext, sample: number, settings: Settings): number {
  const { jump, noiseNewtons } = context;
  const { motion, events, anchor } = jump;
  const { rateHz } = motion.signal;
  const massKg = motion.weightNewtons / motion.gravity;
  const from = events.onset ?? (anchor.kind === "still" ? anchor.window.start : sample);
  const seconds = Math.abs(sample - from) / rateHz;
  const atOnset = velocityNoise(context, from) * seconds;
  const since = (noiseNewtons / massKg) * Math.sqrt(seconds ** 3 / 3 / rateHz);
  return Math.hypot(atOnset, since, settings.weighingSwayDisplacement);
}
