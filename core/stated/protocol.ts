import type { InvolvedSide, Side } from "../ground/limb.ts";
import type { ProtocolTest } from "./protocol-schema.ts";

/** The leg that a test is done with first: the uninvolved one, or the right where nobody is injured. */
export function legsInOrder(involved: InvolvedSide | undefined): readonly [Side, Side] {
  return involved === "right" ? ["left", "right"] : ["right", "left"];
}

/** The legs that do a test, in order; none where only the uninvolved leg does it and it is not known which that is. */
export function limbsOf({ legs, only }: ProtocolTest, involved: InvolvedSide | undefined): readonly ("both" | Side)[] {
  if (legs === "both") return ["both"];
  if (only === undefined) return legsInOrder(involved);
  return involved === "left" || involved === "right" ? [legsInOrder(involved)[0]] : [];
}
