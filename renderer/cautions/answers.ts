import { cautionQuestions, changeQuestions, questionsFor } from "../../core/gate/caution-questions.ts";
import type { CautionName } from "../../core/stated/gate-words.ts";
import { type EffusionGrade, effusionGrades } from "../../core/stated/gate-words.ts";
import type { CautionAddition } from "../../electron/cautions/caution-addition.ts";
import { words } from "../words/words.ts";

const prose = words.screens.cautions;

/** `session`: before the session; `change`: what can have changed, before the first single-leg or drop test. */
export type Asking = "session" | "change";

/** The answers as the form holds them; absent or "" for what was not answered. */
export interface WrittenAnswers {
  readonly pain: string;
  readonly otherLeg: string;
  readonly elsewhere: string;
  readonly effusion: string;
  readonly questions: Readonly<Partial<Record<CautionName, string>>>;
  readonly restriction: string;
  readonly by: string;
  readonly note: string;
}

/** Nothing answered yet; the name of who answered is carried over from the last asking. */
export function noAnswers(by: string): WrittenAnswers {
  return { pain: "", otherLeg: "", elsewhere: "", effusion: "", questions: {}, restriction: "", by, note: "" };
}

/** The questions of an asking, in order. */
export function questionsOf(asking: Asking, injured: boolean): readonly CautionName[] {
  return asking === "session" ? questionsFor(injured) : injured ? changeQuestions : [];
}

/** A question as it stands in an asking: what can have changed is asked of today. */
export function askedIn(asking: Asking, name: CautionName): string {
  return asking === "change" && name === "givingWay" ? prose.gaveWay : cautionQuestions[name].question;
}

/** When an asking is about: the session's day, with the time of day where it is today. */
export interface AskedAt {
  readonly asking: Asking;
  readonly injured: boolean;
  /** "2026-10-13T09:40" */
  readonly meant: string;
}

/** The answers ready to be kept; a sentence where one is missing or cannot be meant. */
export function answeredCautions(
  written: WrittenAnswers,
  { asking, injured, meant }: AskedAt,
): { readonly addition: CautionAddition } | { readonly problem: string } {
  const pain = painOf(written.pain);
  const otherLeg = painOf(written.otherLeg);
  const elsewhere = painOf(written.elsewhere);
  const effusion: EffusionGrade | undefined = effusionGrades.find((grade) => grade === written.effusion);
  if (pain === undefined || [pain, otherLeg, elsewhere].some((each) => each === "no number")) {
    return { problem: prose.painIsANumber };
  }
  if (injured && effusion === undefined) return { problem: prose.chooseEffusion };
  const names = questionsOf(asking, injured);
  const open = names.find((name) => yesOrNo(written.questions[name]) === undefined);
  if (open !== undefined) return { problem: prose.notAnsweredYet(askedIn(asking, open)) };
  const by = written.by.trim();
  if (by === "") return { problem: prose.sayWhoAnswered };
  const restriction = written.restriction.trim();
  if (written.questions.restriction === "yes" && restriction === "") {
    return { problem: prose.writeTheRestriction };
  }
  const note = written.note.trim();
  const moment = asking === "session" ? "before" : "during";
  const read = { moment, meant, by } as const;
  const painAt = (value: ReturnType<typeof painOf>, where: "knee" | "other leg" | "elsewhere") =>
    typeof value === "number" ? [{ ...read, pain: value, where }] : [];
  return {
    addition: {
      answers: {
        asked: asking,
        meant,
        by,
        answers: Object.fromEntries(names.flatMap((name) => answerOf(name, written))),
        ...(written.questions.restriction === "yes" && { restriction }),
        ...(note !== "" && { note }),
      },
      readings: [
        ...painAt(pain, "knee"),
        ...painAt(otherLeg, "other leg"),
        ...painAt(elsewhere, "elsewhere"),
        ...(effusion === undefined ? [] : [{ ...read, effusion }]),
      ],
    },
  };
}

/** A number from 0 to 10; undefined where nothing is written. */
export function painOf(written: string): number | "no number" | undefined {
  const text = written.trim().replace(",", ".");
  if (text === "") return undefined;
  const value = Number(text);
  return value >= 0 && value <= 10 ? value : "no number";
}

function yesOrNo(answer: string | undefined): "yes" | "no" | undefined {
  return answer === "yes" || answer === "no" ? answer : undefined;
}

function answerOf(name: CautionName, written: WrittenAnswers): readonly (readonly [CautionName, "yes" | "no"])[] {
  const answer = yesOrNo(written.questions[name]);
  return answer === undefined ? [] : [[name, answer]];
}

/** The answers that speak against jumping, in words. */
export function spokenAgainst(written: WrittenAnswers): readonly CautionName[] {
  return questionsFor(true).filter((name) => written.questions[name] === cautionQuestions[name].speaksAgainst);
}

export const askingWords: Readonly<Record<Asking, string>> = {
  session: prose.beforeSession,
  change: prose.beforeFirstSingleLeg,
};
