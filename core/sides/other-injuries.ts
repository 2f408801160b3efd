import { type InvolvedSide, oppositeSide, type Side } from "../ground/limb.ts";
import { capitalised, dateInWords } from "../ground/plain-words.ts";
import type { OtherInjury } from "../stated/other-injury.ts";
import type { SessionDescription } from "../stated/session.ts";

/** "Left ankle, 16 November 2026: sprain": an injury that involves no side, in words. */
function injuryInWords(injury: OtherInjury): string {
  return `${capitalised(placeAndDay(injury))}: ${injury.what.trim().replace(/\.$/, "")}`;
}

function placeAndDay({ side, bodyPart, date }: OtherInjury): string {
  const where = bodyPart === "other" ? side : `${side} ${bodyPart}`;
  return date === undefined ? where : `${where}, ${dateInWords(date)}`;
}

function costs(side: Side, involved: InvolvedSide | undefined): string {
  if (involved !== "left" && involved !== "right") return `It may lower the ${side} limb.`;
  return side === involved
    ? "It may lower the involved limb too."
    : "It may lower the comparison limb and lift the index.";
}

/**
 * What must be said where sides stand beside each other: injuries that involve no side and yet make a limb another one to
 * compare with (PRODUCT: which other knee counts). One sentence or two each.
 */
export function otherInjuryCautions({
  otherInjuries = [],
  involved,
}: Pick<SessionDescription, "otherInjuries" | "involved">): readonly string[] {
  return otherInjuries.map((each) => `${injuryInWords(each)}. ${costs(each.side, involved)}`);
}

/** The injuries of the limb that the involved one is held against; none where not one side is involved. */
export function ofComparisonLimb({
  otherInjuries = [],
  involved,
}: Pick<SessionDescription, "otherInjuries" | "involved">): readonly OtherInjury[] {
  if (involved !== "left" && involved !== "right") return [];
  return otherInjuries.filter((each) => each.side === oppositeSide(involved));
}

/** What belongs beside a comparison, in short, because it stands in every row. */
export function comparisonLimbCaution(injury: OtherInjury): string {
  return `The comparison limb has an injury of its own: ${placeAndDay(injury)}.`;
}
