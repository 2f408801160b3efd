import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import { converterStep } from "./converter-step.ts";
import type { JumpCut } from "./cut-trials.ts";
import { type ForceSignal, meanAndDeviation } from "./force-signal.ts";
import type { PreparedRecording } from "./prepare-recording.ts";
import { edgeFeet } from "./smoothed-edges.ts";

/**
 * Says that a recording was smoothed before it came here: the foot of the take-off is long, that of the touchdown bends
 * the same way, and an empty plate shows no noise from one sample to the next. Each alone has other causes.
 */
export function smoothedFindings(prepared: PreparedRecording, cut: JumpCut, settings: Settings): readonly Finding[] {
  const { total, segments } = prepared;
  const feet = edgeFeet(total, cut, segments.steadyLoad, settings);
  if (feet === undefined || feet.takeoff <= settings.smoothedFootSeconds || (feet.touchdown ?? 1) <= 0) return [];
  if (hasSampleNoise(total, cut, settings)) return [];
  const place = { at: "time", seconds: cut.flight.start / total.rateHz, decimals: 2 } as const;
  return [finding("smoothed", "warning", { footSeconds: feet.takeoff }, { place })];
}

/** True where the noise of the empty plate changes from sample to sample, as a converter's does. */
function hasSampleNoise({ force }: ForceSignal, { flight }: JumpCut, settings: Settings): boolean {
  const quarter = Math.floor((flight.end - flight.start) / 4);
  const from = flight.start + quarter;
  const to = flight.end - quarter;
  const { deviation } = meanAndDeviation(force, from, to);
  let squares = 0;
  for (let index = from + 1; index < to - 1; index += 1) {
    squares += (force[index - 1]! - 2 * force[index]! + force[index + 1]!) ** 2;
  }
  const sampleNoise = Math.sqrt(squares / (to - from - 2) / 6);
  const rounding = settings.smoothedRoundingSteps * (converterStep(force) ?? 0);
  return sampleNoise > Math.max(settings.heldNoiseNewtons, settings.smoothedNoiseFraction * deviation, rounding);
}
