import { oppositeSide, type Side } from "../ground/limb.ts";
import type { Interval } from "./comparison.ts";

/** Fewest decimals, from none to two, with which a percentage does not read as a round 100 while it is none. */
function percentBelow(value: number): string {
  const decimals = [0, 1, 2].find((digits) => Number(value.toFixed(digits)) < 100);
  return decimals === undefined ? "over 99.99" : value.toFixed(decimals);
}

/**
 * The weaker side in words, for athletes without an involved side, and whether the spread of the trials leaves that
 * open. `adjective` is "weaker" for what the legs produce, "lower" for what they bear.
 */
export function weakerSide(
  first: Side,
  index: number,
  adjective: "weaker" | "lower",
  widest: Interval | undefined,
): string {
  if (index === 100) return "Both sides are equal.";
  const side = index < 100 ? first : oppositeSide(first);
  const percent = percentBelow(index < 100 ? index : 10000 / index);
  const open =
    widest !== undefined && widest.low <= 100 && widest.high >= 100
      ? `, but the ${Number((100 * widest.confidence).toFixed(1))} % interval includes 100 %`
      : "";
  return `The ${side} side is the ${adjective} one, at ${percent} % of the ${oppositeSide(side)}${open}.`;
}
