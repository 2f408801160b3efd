import type { SessionOperation } from "../stated/cautions-schema.ts";

/** Words in a graft's or an operation's name, and what to look after then (common practice). */
const cautions: readonly (readonly [words: RegExp, caution: string])[] = [
  [/bone|patell|quadriceps/i, "Ask for pain in the front of the knee."],
  [/hamstring|semitendinosus/i, "Maximal tests of knee flexion strength from week 12."],
  [/cartilage|osteotomy/i, "The surgeon's word comes first."],
];

/** What graft and procedure ask to be looked after, in whole sentences; "" where they say nothing known. */
export function graftCaution(operation: SessionOperation | undefined): string {
  if (operation === undefined) return "";
  const named = `${operation.graft ?? ""} ${operation.procedure ?? ""}`;
  return cautions
    .filter(([words]) => words.test(named))
    .map(([, caution]) => caution)
    .join(" ");
}
