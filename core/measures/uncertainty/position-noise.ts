import { velocityNoise } from "../../events/velocity-noise.ts";
import type { Settings } from "../../settings/settings.ts";
import type { MeasureContext } from "../raw-measure.ts";

/**
 * What noise and sway leave in a position counted from the onset or from the quiet standing after a landing, metres:
 * noise already in the velocity there, times the time; white noise integrated twice, σ·√(dt·T³/3); and how far from its
 * mean standing the body swayed there, beyond what force showed of it (twice the floor, on simulated jumps: taking the
 * trend away hides what is slow).
 */
export function positionNoise({ jump, noiseNewtons }: MeasureContext, sample: number, settings: Settings): number {
  const { motion, events, anchor } = jump;
  const { rateHz } = motion.signal;
  const massKg = motion.weightNewtons / motion.gravity;
  const from = events.onset ?? (anchor.kind === "still" ? anchor.window.start : sample);
  const seconds = Math.abs(sample - from) / rateHz;
  const atOnset = velocityNoise(jump, noiseNewtons, from) * seconds;
  const since = (noiseNewtons / massKg) * Math.sqrt(seconds ** 3 / 3 / rateHz);
  return Math.hypot(atOnset, since, settings.onsetHiddenSwayFactor * settings.weighingSwayDisplacement);
}
