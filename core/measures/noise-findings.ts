import { emptyLevel } from "../events/contact-edge.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";

/** Says when the plate is so noisy or rings so long in the flight that its contact events are coarse. */
export function noiseFindings({ total }: PreparedRecording, cut: JumpCut, settings: Settings): readonly Finding[] {
  const { deviation } = emptyLevel(total, cut.flight, settings);
  if (deviation <= settings.plateNoisyNewtons) return [];
  const where = `${(cut.flight.start / total.rateHz).toFixed(2)} s to ${(cut.flight.end / total.rateHz).toFixed(2)} s`;
  return [
    proseFinding(
      "plate-noisy",
      "warning",
      `Force varies by ${deviation.toFixed(1)} N (standard deviation) while nobody is on the plate: take-off and touchdown are coarse, and their uncertainties are large.`,
      "Look for hum, vibration or a loose plate; a plate at rest varies by one or two newtons.",
      { where },
    ),
  ];
}
