import { integralNoise } from "./integral-noise.ts";
import type { JumpMotion } from "./jump-events.ts";

/** What plate noise leaves in the velocity at a sample, integrated from where velocity is known; m/s. */
export function velocityNoise({ motion, anchor, events }: JumpMotion, noiseNewtons: number, sample: number): number {
  const massKg = motion.weightNewtons / motion.gravity;
  return integralNoise(noiseNewtons, Math.abs(sample - knownFrom()), motion.signal.rateHz) / massKg;

  function knownFrom(): number {
    if (anchor.kind === "still") return anchor.window.start < sample ? anchor.window.start : anchor.window.end;
    return (anchor.kind === "flight" ? events.takeoff : motion.startSample) ?? sample;
  }
}
