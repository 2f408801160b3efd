import { emptyLevel } from "../events/contact-edge.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

/** Says when the plate is so noisy or rings so long in the flight that its contact events are coarse. */
export function noiseFindings({ total }: PreparedRecording, cut: JumpCut, settings: Settings): readonly Finding[] {
  const { deviation } = emptyLevel(total, cut.flight, settings);
  if (deviation <= settings.plateNoisyNewtons) return [];
  const fromSeconds = cut.flight.start / total.rateHz;
  const toSeconds = cut.flight.end / total.rateHz;
  const place = { at: "span", fromSeconds, toSeconds, decimals: 2 } as const;
  return [finding("plate-noisy/empty", "warning", { deviationNewtons: deviation }, { place })];
}
