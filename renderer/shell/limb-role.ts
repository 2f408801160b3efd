import { type Bearer, type InvolvedSide, type Limb, oppositeSide, type Side } from "../../core/ground/limb.ts";
import type { TrialResult } from "../../core/result/trial-result.ts";
import type { LimbRole } from "../charts/limb-role.ts";
import { words } from "../words/words.ts";

/** The role of a limb, given which side is involved (nobody said: as if nobody were injured). */
export function limbRole(limb: Limb, involved: InvolvedSide | undefined): LimbRole {
  if (limb === "both") return "total";
  if (involved !== "left" && involved !== "right") return limb;
  return limb === involved ? "involved" : "uninvolved";
}

/** "right, involved" where one side is involved, else "right". */
export function limbWords(limb: Limb, involved: InvolvedSide | undefined): string {
  const role = limbRole(limb, involved);
  if (role === "total") return "both";
  return role === "involved" || role === "uninvolved" ? `${limb}, ${role}` : limb;
}

/** The role of whatever bears a value: a plate whose foot nobody knows wears no limb's colour. */
export function bearerRole({ side, plate }: Bearer, involved: InvolvedSide | undefined): LimbRole {
  if (plate === undefined) return limbRole(side, involved);
  return plate === 1 ? "plate-1" : "plate-2";
}

/** "right, involved", "right", "plate 1". */
export function bearerWords(bearer: Bearer, involved: InvolvedSide | undefined): string {
  return bearer.side === undefined ? words.limbs.bearer(bearer) : limbWords(bearer.side, involved);
}

/**
 * Who stood on a plate of a trial, by its position from 0: the limb where that is known, else the plate itself. A plate
 * for both legs bears the total.
 */
export function plateBearer({ plates, feet }: Pick<TrialResult, "plates" | "feet">, index: number): Bearer {
  const plate = plates[index];
  if (plate?.limb === "both") return { side: "both" };
  return plate === undefined || feet !== undefined || plate.proof === "unproved"
    ? { plate: index + 1 }
    : { side: plate.limb };
}

/** The two sides in the order of screens: the involved one first, left first where nobody or both are injured. */
export function orderedSides(involved: InvolvedSide | undefined): readonly [Side, Side] {
  const first: Side = involved === "right" ? "right" : "left";
  return [first, oppositeSide(first)];
}
