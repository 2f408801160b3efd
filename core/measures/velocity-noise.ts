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
