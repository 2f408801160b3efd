import { type Finding, finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import { otherLandingPlate } from "../trial/landing-plate.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { landingForceMeasures } from "./clipping-findings.ts";

/** A single-leg jump that leaves one plate and lands on the other: its landing is not that of the limb that jumped. */
export function landingPlateFindings(
  prepared: PreparedRecording,
  cut: JumpCut,
  limb: Limb,
  pushPlate: string | undefined,
  expected: readonly MeasureId[],
  settings: Settings,
): readonly Finding[] {
  if (limb === "both") return [];
  const landed = otherLandingPlate(prepared, cut, pushPlate, settings);
  if (landed === undefined || pushPlate === undefined) return [];
  const seconds = cut.landing.start / prepared.recording.rateHz;
  return [
    finding(
      "landing-other-plate",
      "warning",
      { limb, pushPlate, landingPlate: landed, seconds },
      {
        place: { at: "time", seconds, decimals: 2 },
        removes: landingForceMeasures.filter((id) => expected.includes(id)),
      },
    ),
  ];
}
