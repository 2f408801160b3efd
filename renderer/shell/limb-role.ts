import type { InvolvedSide, Limb, Side } from "../../core/limb.ts";
import { oppositeSide } from "../../core/limb.ts";

/** How a limb is drawn. Only an injured athlete's limbs are coloured; a healthy pair is drawn in ink. */
export type LimbRole = "involved" | "uninvolved" | "left" | "right" | "total";

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

/** The two sides in the order of screens: the involved one first, left first where nobody or both are injured. */
export function orderedSides(involved: InvolvedSide | undefined): readonly [Side, Side] {
  const first: Side = involved === "right" ? "right" : "left";
  return [first, oppositeSide(first)];
}
