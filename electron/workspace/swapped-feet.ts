import { oppositeSide, type Side } from "../../core/ground/limb.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import type { StatedPlate } from "../../core/stated/stated-plate.ts";
import { RequestRefused } from "../refusals/request-refused.ts";

/**
 * The plates of one file with one foot on plate 1, the first in the order of the file, and the other on plate 2.
 * @throws RequestRefused where the recording has no two plates, one for each foot
 */
export function feetInOrder(analysis: SessionAnalysis, file: string, onPlate1: Side): readonly StatedPlate[] {
  const [first, second] = twoPlates(analysis, file);
  return [
    { column: first.name, foot: onPlate1 },
    { column: second.name, foot: oppositeSide(onPlate1) },
  ];
}

/**
 * The plates of one file with the feet the other way round than they are now taken for.
 * @throws RequestRefused where the recording has no two plates, one for each foot
 */
export function swappedFeet(analysis: SessionAnalysis, file: string): readonly StatedPlate[] {
  return twoPlates(analysis, file).map(({ name, limb }) => ({ column: name, foot: oppositeSide(limb) }));
}

interface OneFoot {
  readonly name: string;
  readonly limb: Side;
}

function twoPlates(analysis: SessionAnalysis, file: string): readonly [OneFoot, OneFoot] {
  const plates = analysis.recordings.get(file)?.recording?.plates ?? [];
  const [first, second, ...more] = plates.flatMap(({ name, limb }) => (limb === "both" ? [] : [{ name, limb }]));
  if (first === undefined || second === undefined || more.length > 0) {
    throw new RequestRefused(`${file} has no two plates, one for each foot.`);
  }
  return [first, second];
}
