import type { CriterionResult, Status } from "../criteria/criterion.ts";
import type { SessionResult } from "../result.ts";
import { isUsed } from "./sheet-trials.ts";

const missingWords: readonly (readonly [Status, string])[] = [
  ["not-measured", "Not measured today"],
  ["no-reference", "No earlier value to hold against"],
  ["out-of-date", "Out of date"],
];

/** What is still missing for a complete account, one item a line. */
export function missingToday(session: SessionResult): readonly string[] {
  const { criteria, description, trials } = session;
  const used = trials.filter(isUsed).length;
  const unseen = trials.filter((trial) => isUsed(trial) && !trial.seen).length;
  return [
    ...missingWords.flatMap(([status, words]) => {
      const labels = criteria.filter((each) => each.status === status).map((each) => each.criterion.label);
      return labels.length === 0 ? [] : [`${words}: ${labels.join("; ")}.`];
    }),
    ...moreTrials(criteria),
    ...(session.comparisons.some((each) => each.plates === "unproved" && each.role === "criterion")
      ? [
          "Proof of which foot stood on which plate: one single-leg trial, or two seconds of standing on one leg, gives it.",
        ]
      : []),
    ...(unseen === 0
      ? []
      : [`Nobody has yet looked at the events of ${unseen === used ? "the" : `${unseen} of the`} trials used.`]),
    ...(description.involved === undefined ? ["The involved side is not stated."] : []),
    ...(description.cautions === undefined ? ["No record says that the cautions for jump testing were asked."] : []),
    "What no force plate measures: strength, range of motion, laxity, questionnaires and the sport-specific programme. The clinician adds it.",
  ];
}

/** Whether more trials could settle open questions, each answer once with the criteria it is given for. */
function moreTrials(criteria: readonly CriterionResult[]): readonly string[] {
  const answers = [...new Set(criteria.map((each) => each.moreTrials))].filter((answer) => answer !== "");
  return answers.map((answer) => {
    const labels = criteria.filter((each) => each.moreTrials === answer).map((each) => each.criterion.label);
    return `${labels.join("; ")}: ${answer}`;
  });
}
