import type { SessionAnalysis } from "../core/analysis.ts";
import { oppositeSide } from "../core/limb.ts";
import type { StatedPlate } from "../core/session.ts";
import { RequestRefused } from "./request-refused.ts";

/**
 * The plates of one file with the feet the other way round than they are now taken for.
 * @throws RequestRefused where the recording has no two plates, one for each foot
 */
export function swappedFeet(analysis: SessionAnalysis, file: string): readonly StatedPlate[] {
  const plates = analysis.recordings.get(file)?.recording?.plates ?? [];
  const swapped = plates.flatMap(({ name, limb }) =>
    limb === "both" ? [] : [{ column: name, foot: oppositeSide(limb) }],
  );
  if (swapped.length !== 2) throw new RequestRefused(`${file} has no two plates whose feet could be swapped.`);
  return swapped;
}
