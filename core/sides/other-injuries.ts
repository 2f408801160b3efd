import { type InvolvedSide, oppositeSide, type Side } from "../limb.ts";
import { capitalised, dateInWords } from "../plain-words.ts";
import type { OtherInjury, SessionDescription } from "../session.ts";

/** "Left ankle, 16 November 2026: sprain": an injury that involves no side, in words. */
function injuryInWords({ side, bodyPart, what, date }: OtherInjury): string {
  const where = bodyPart === "other" ? side : `${side} ${bodyPart}`;
  const when = date === undefined ? "" : `, ${dateInWords(date)}`;
  return `${capitalised(where)}${when}: ${what.trim().replace(/\.$/, "")}`;
}

function costs(side: Side, involved: InvolvedSide | undefined): string {
  if (involved !== "left" && involved !== "right") return `Values of the ${side} limb may be lower for it.`;
  return side === involved
    ? "It is on the involved limb too, whose values may be lower for it."
    : "It is on the comparison limb, whose values may be lower for it, which lifts the index.";
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

/** The cautions that belong beside a comparison: those of the limb the involved one is held against. */
export function comparisonLimbCautions(
  otherInjuries: readonly OtherInjury[] | undefined,
  involved: InvolvedSide,
): readonly string[] {
  if (involved !== "left" && involved !== "right") return [];
  const ofLimb = (otherInjuries ?? []).filter((each) => each.side === oppositeSide(involved));
  return otherInjuryCautions({ otherInjuries: ofLimb, involved });
}
