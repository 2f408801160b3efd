import type { GateOpening } from "../stated/cautions-schema.ts";
import { type CautionName, cautionNames } from "../stated/gate-words.ts";
import { cautionQuestions } from "./caution-questions.ts";
import type { ClosureCode } from "./closure.ts";

/** The stable code of what an answer closes; undefined for one that is printed only. */
export const closureCodes: Readonly<Record<CautionName, ClosureCode | undefined>> = {
  feverOrWound: "fever-or-wound",
  givingWay: "giving-way",
  locking: "locking",
  newInjuryOrIllness: "new-injury-or-illness",
  calfPainOrBreathlessness: "calf-pain-or-breathlessness",
  restriction: "surgeon-restriction",
  landingPractice: "no-landing-practice",
  painkiller: undefined,
};

/** The answers that an opening speaks of, each with whether a doctor must have agreed. */
export function closuresToOpen({
  opens,
}: Pick<GateOpening, "opens">): readonly { readonly words: string; readonly needsDoctor: boolean }[] {
  return cautionNames
    .filter((name) => opens.some(({ code }) => code === closureCodes[name]))
    .map((name) => cautionQuestions[name]);
}
