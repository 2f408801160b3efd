import type { CriterionResult } from "../criteria/criterion.ts";
import { openQuestions } from "../gate/open-questions.ts";
import { countOf, listInWords } from "../ground/plain-words.ts";
import type { Status } from "../ground/status.ts";
import { askedAnswers } from "../protocol/asked-answers.ts";
import { sessionProgress } from "../protocol/session-progress.ts";
import { countsInMeans, isHeld } from "../result/held-trial.ts";
import type { SessionResult } from "../result/session-result.ts";

const missingWords: readonly (readonly [Status, string])[] = [
  ["not-measured", "Not measured today"],
  ["no-reference", "No earlier value to hold against"],
  ["out-of-date", "Out of date"],
];

/** What is still missing for a complete account, one item a line. */
export function missingToday(session: SessionResult): readonly string[] {
  const { criteria, description, trials } = session;
  const used = trials.filter(countsInMeans).length;
  const held = trials.filter((trial) => isHeld(trial) && trial.excluded === undefined).length;
  const unseen = trials.filter((trial) => countsInMeans(trial) && !trial.seen).length;
  return [
    ...missingWords.flatMap(([status, words]) => {
      const named = whichCriteria(criteria, (each) => each.status === status);
      return named === undefined ? [] : [`${words}: ${named}.`];
    }),
    ...protocolMissing(session),
    // What is asked about feet stands below for two-leg trials together.
    ...askedAnswers(session).flatMap(({ about, question }) => (about === "feet" ? [] : [question])),
    ...moreTrials(criteria),
    ...(session.comparisons.some((each) => each.plates === "unproved" && each.role === "criterion")
      ? [
          "Proof of which foot stood on which plate: one single-leg trial, or two seconds of standing on one leg, gives it.",
        ]
      : []),
    ...(held === 0
      ? []
      : [
          `A person's word on ${countOf(held, "trial")} held out of means because the weight differs: keep or exclude.`,
        ]),
    ...(unseen === 0
      ? []
      : [`Nobody has yet looked at the events of ${unseen === used ? "the" : `${unseen} of the`} trials used.`]),
    ...(description.involved === undefined ? ["The involved side is not stated."] : []),
    ...notAnswered(session.gate),
    "What no force plate measures: strength, range of motion, laxity, questionnaires and the sport-specific programme. The clinician adds it.",
  ];
}

/** What the cautions still want before statuses may stand. */
function notAnswered(gate: SessionResult["gate"]): readonly string[] {
  const open = openQuestions(gate);
  return open.length === 0 ? [] : [`Answers to the cautions for jump testing: ${listInWords(open)}.`];
}

/** What the session's protocol still wants; nothing without one, or when it is done. */
function protocolMissing(session: SessionResult): readonly string[] {
  const progress = sessionProgress(session);
  if (progress === undefined || progress.missing.length === 0) return [];
  return [`Missing in the protocol “${progress.protocol}”: ${progress.missing.join(" ")}`];
}

/** Whether more trials could settle open questions, each answer once with the criteria it is given for. */
function moreTrials(criteria: readonly CriterionResult[]): readonly string[] {
  const answers = [...new Set(criteria.map((each) => each.moreTrials))].filter((answer) => answer !== "");
  const undecided = criteria.filter((each) => each.status === "too-close-to-call").length;
  return answers.map((answer) => {
    const asked = criteria.filter((each) => each.moreTrials === answer);
    if (asked.length <= mostNamed) return `${asked.map((each) => each.criterion.label).join("; ")}: ${answer}`;
    const who = asked.length === undecided ? "Each of the" : `${asked.length} of the`;
    return `${who} ${undecided} criteria that are too close to call: ${answer}`;
  });
}

/** More criteria than this are counted: the table above them names each with its status. */
const mostNamed = 2;

/** The criteria with something in common, by name or, where they are many, by number; undefined for none. */
function whichCriteria(
  criteria: readonly CriterionResult[],
  wanted: (result: CriterionResult) => boolean,
): string | undefined {
  const found = criteria.filter(wanted);
  if (found.length === 0) return undefined;
  if (found.length > mostNamed) return `${found.length} of the ${criteria.length} criteria above`;
  return found.map((each) => each.criterion.label).join("; ");
}
