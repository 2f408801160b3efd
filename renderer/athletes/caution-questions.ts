import { type EffusionGrade, effusionGrades } from "../../core/session.ts";
import type { RecordContent } from "../../electron/register/record-schemas.ts";

type SessionContent = RecordContent<"sessions">;
export type Cautions = NonNullable<SessionContent["cautions"]>[number];

/** The moments at which the cautions are asked. */
export type CautionMoment = Cautions["before"];

/** Questions answered by yes or no. */
export const yesNoQuestions = [
  { name: "fever", question: "Fever, or problems of the wound?" },
  { name: "givingWay", question: "Has the knee given way or locked since the last session?" },
  { name: "restriction", question: "Does a restriction by the surgeon speak against today's jumps?" },
  { name: "noPractice", question: "No practice in landing during the last two weeks?" },
] as const;

type YesNoName = (typeof yesNoQuestions)[number]["name"];

/** The answers as the form holds them; "" for what was not answered. */
export type WrittenAnswers = Readonly<Record<YesNoName | "pain" | "effusion" | "answeredBy" | "note", string>>;

export const noAnswers: WrittenAnswers = {
  pain: "",
  effusion: "",
  fever: "",
  givingWay: "",
  restriction: "",
  noPractice: "",
  answeredBy: "",
  note: "",
};

/** What the answers become in the session's record. */
export interface AnsweredCautions {
  readonly caution: Cautions;
  readonly pain: number;
  readonly effusion: EffusionGrade;
}

/** The answers ready to be kept; a sentence where one is missing or cannot be meant. */
export function answeredCautions(
  written: WrittenAnswers,
  before: CautionMoment,
  at: { readonly date: string; readonly instant: string },
): AnsweredCautions | { readonly problem: string } {
  const painText = written.pain.trim().replace(",", ".");
  const pain = Number(painText);
  const effusion = effusionGrades.find((grade) => grade === written.effusion);
  if (painText === "" || !(pain >= 0 && pain <= 10)) return { problem: "Pain now is a number from 0 to 10." };
  if (effusion === undefined) return { problem: "Choose the grade of effusion now." };
  const open = yesNoQuestions.find(({ name }) => written[name] === "");
  if (open !== undefined) return { problem: `Not answered yet: ${open.question}` };
  const answeredBy = written.answeredBy.trim();
  if (answeredBy === "") return { problem: "Say who answered the cautions." };
  const note = written.note.trim();
  const answers = [
    { question: "Pain now, 0 to 10", answer: String(pain) },
    { question: "Effusion now", answer: effusion },
    ...yesNoQuestions.map(({ name, question }) => ({ question, answer: written[name] })),
  ];
  const caution = { before, answeredBy, date: at.date, at: at.instant, answers, ...(note !== "" && { note }) };
  return { caution, pain, effusion };
}

/** The questions that were answered with yes, which somebody must look at before the first jump. */
export function affirmed(written: WrittenAnswers): readonly string[] {
  return yesNoQuestions.filter(({ name }) => written[name] === "yes").map(({ question }) => question);
}

export const momentWords: Readonly<Record<CautionMoment, string>> = {
  session: "before the session",
  "single-leg tests": "before single-leg tests",
  "drop tests": "before drop tests",
};
