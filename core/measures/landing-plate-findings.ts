import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { otherLandingPlate } from "../trial/landing-plate.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { inPlateWords } from "../words/english/plate-words.ts";
import { landingForceMeasures } from "./clipping-findings.ts";

/** A single-leg jump that leaves one plate and lands on the other: its landing is not that of the limb that jumped. */
export function landingPlateFindings(
  prepared: PreparedRecording,
  cut: JumpCut,
  limb: Limb,
  pushPlate: string | undefined,
  expected: readonly string[],
  settings: Settings,
): readonly Finding[] {
  const landed = limb === "both" ? undefined : otherLandingPlate(prepared, cut, pushPlate, settings);
  if (landed === undefined || pushPlate === undefined) return [];
  const where = `${(cut.landing.start / prepared.recording.rateHz).toFixed(2)} s`;
  return [
    proseFinding(
      "landing-other-plate",
      "warning",
      `The push is on ${inPlateWords(pushPlate)} alone, the landing at ${where} on ${inPlateWords(landed)} alone: the athlete landed on the other leg, or the two columns changed places in the flight. Landing measures of the ${limb} leg are left out.`,
      "Look at how the athlete landed; if it was on the same leg, the columns are not to be trusted: exclude the trial.",
      { where, removes: landingForceMeasures.filter((id) => expected.includes(id)) },
    ),
  ];
}
