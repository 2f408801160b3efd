import type { LimitsInForce } from "../gate/limits.ts";
import type { Protocol } from "../stated/protocol-schema.ts";

/** The protocol with the landings of a day that the clinic allows where those are fewer, or where it sets none itself. */
export function withStricterLandings(
  protocol: Protocol,
  { landingsTwoLeg, landingsPerLeg }: Pick<LimitsInForce, "landingsTwoLeg" | "landingsPerLeg">,
): Protocol {
  const { twoLeg, perLeg } = protocol.landingsADay ?? { twoLeg: landingsTwoLeg, perLeg: landingsPerLeg };
  return {
    ...protocol,
    landingsADay: { twoLeg: Math.min(twoLeg, landingsTwoLeg), perLeg: Math.min(perLeg, landingsPerLeg) },
  };
}
