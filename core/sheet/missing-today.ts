import type { CriterionResult, Status } from "../criteria/criterion.ts";
import type { SessionResult } from "../result.ts";
import { countOf } from "./plain-words.ts";
import { isUsed } from "./sheet-trials.ts";

const missingWords: readonly (readonly [Status, string])[] = [
  ["not-measured", "Not measured today"],
  ["no-reference", "No earlier value to hold against"],
  ["out-of-date", "Out of date"],
];

/** What is still missing for a complete account, one item a line. */
export function missingToday(session: SessionResult): readonly string[] {
  const { criteria, description, trials } = session;
  const unseen = trials.filter((trial) => isUsed(trial) && !trial.seen).length;
  return [
    ...missingWords.flatMap(([status, words]) => {
      const labels = criteria.filter((each) => each.status === status).map((each) => each.criterion.label);
      return labels.length === 0 ? [] : [`${words}: ${labels.join("; ")}.`];
    }),
    ...criteria.filter((each) => each.moreTrials !== "").map(moreTrialsOf),
    ...(session.comparisons.some((each) => each.plates === "unproved" && each.role === "criterion")
      ? [
          "Proof of which foot stood on which plate: one single-leg trial, or two seconds of standing on one leg, gives it.",
        ]
      : []),
    ...(unseen === 0
      ? []
      : [`Nobody has looked at the events of ${countOf(unseen, "trial")} that ${unseen === 1 ? "is" : "are"} used.`]),
    ...(description.involved === undefined ? ["The involved side is not stated."] : []),
    ...(description.cautions === undefined ? ["No record says that the cautions for jump testing were asked."] : []),
    "What no force plate measures: strength, range of motion, laxity, questionnaires and the sport-specific programme. The clinician adds it.",
  ];
}

function moreTrialsOf(result: CriterionResult): string {
  return `${result.criterion.label}: ${result.moreTrials}`;
}
