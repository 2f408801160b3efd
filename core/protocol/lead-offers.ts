import type { InvolvedSide, Side } from "../ground/limb.ts";
import { oppositeSide } from "../ground/limb.ts";
import { legsInOrder } from "../stated/protocol.ts";

/** The leg that led in every trial of a series, as it likely was. */
export interface LeadOffer {
  /** In step with the series; what was stated stays. */
  readonly leads: readonly Side[];
  readonly because: string;
}

/**
 * Which leg likely led in the trials of a series where it is not stated. The legs take turns, or one leg leads as often
 * as the protocol wants and then the other; each is offered where it agrees with every leg that was stated. Where none
 * was stated the series may begin with either leg, the uninvolved one first; where neither agrees, all of one leg.
 * @param stated in the order of recording
 * @param perLeg trials wanted with each leg leading
 */
export function leadOffers(
  stated: readonly (Side | undefined)[],
  perLeg: number | undefined,
  involved: InvolvedSide | undefined,
): readonly LeadOffer[] {
  const [uninvolved] = legsInOrder(involved);
  const firsts = [uninvolved, oppositeSide(uninvolved)];
  const known = stated.filter((lead) => lead !== undefined).length;
  const alternating = firsts.map((first) => ({
    leads: stated.map((_, at) => (at % 2 === 0 ? first : oppositeSide(first))),
    because: known > 1 ? "as the others alternate" : `taking turns, ${first} first`,
  }));
  const inBlocks =
    perLeg === undefined || perLeg < 2
      ? []
      : firsts.map((first) => ({
          leads: stated.map((_, at) => (Math.floor(at / perLeg) % 2 === 0 ? first : oppositeSide(first))),
          because: `${perLeg} with each leg leading, ${first} first`,
        }));
  const fitting = [...alternating, ...inBlocks].filter(
    ({ leads }, at, all) =>
      leads.every((lead, index) => stated[index] === undefined || stated[index] === lead) &&
      all.findIndex((other) => other.leads.every((lead, index) => lead === leads[index])) === at,
  );
  if (fitting.length > 0) return fitting;
  return firsts.map((same) => ({ leads: stated.map((lead) => lead ?? same), because: "if you saw it so" }));
}
