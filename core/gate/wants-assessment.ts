import { cautionNames } from "../stated/gate-words.ts";
import { cautionQuestions } from "./caution-questions.ts";
import type { Closure } from "./closure.ts";
import { medicalAssessmentNow } from "./closures.ts";
import { closureCodes } from "./closures-to-open.ts";

/** True while something is closed for which the session stops for a medical assessment. */
export function wantsAssessment(closures: readonly Closure[]): boolean {
  return cautionNames.some(
    (name) => cautionQuestions[name].stopsForAssessment && closures.some(({ code }) => code === closureCodes[name]),
  );
}

/** Reasons without the call for an assessment, for places where it stands above them. */
export function withoutAssessment(reason: string): string {
  return reason.replaceAll(`${medicalAssessmentNow} `, "");
}
