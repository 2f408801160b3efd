import type { GivenAnswers } from "../../core/stated/cautions-schema.ts";
import type { CautionName } from "../../core/stated/gate-words.ts";
import type { RecordContent } from "./record-schemas.ts";

type EarlierCautions = NonNullable<RecordContent<"sessions">["cautions"]>[number];

/** What the questions of earlier versions asked, and how a "yes" to them reads now. */
const earlierQuestions: Readonly<Record<string, Readonly<Partial<Record<CautionName, "as said" | "turned round">>>>> = {
  "Fever, or problems of the wound?": { feverOrWound: "as said" },
  "Has the knee given way or locked since the last session?": { givingWay: "as said", locking: "as said" },
  "Does a restriction by the surgeon speak against today's jumps?": { restriction: "as said" },
  "No practice in landing during the last two weeks?": { landingPractice: "turned round" },
};

/** Answers that earlier versions kept as questions and words; what they did not ask stays open. */
export function earlierAnswers(cautions: readonly EarlierCautions[] = []): readonly GivenAnswers[] {
  return cautions.flatMap(({ before, answeredBy, date, at, answers }) => {
    if (answers === undefined) return [];
    const read = Object.fromEntries(answers.flatMap(({ question, answer }) => answersOf(question, answer)));
    if (Object.keys(read).length === 0) return [];
    return [
      {
        asked: before === "session" ? ("session" as const) : ("change" as const),
        meant: date,
        written: at ?? `${date}T00:00:00Z`,
        by: answeredBy,
        answers: read,
      },
    ];
  });
}

function answersOf(question: string, answer: string): readonly (readonly [CautionName, "yes" | "no"])[] {
  if (answer !== "yes" && answer !== "no") return [];
  const names = Object.entries(earlierQuestions[question] ?? {}) as [CautionName, "as said" | "turned round"][];
  const other = answer === "yes" ? "no" : "yes";
  return names.map(([name, how]) => [name, how === "as said" ? answer : other] as const);
}
