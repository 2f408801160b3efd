import type { CautionAnswers, GivenAnswers } from "../stated/cautions-schema.ts";
import { type CautionName, cautionNames } from "../stated/gate-words.ts";
import type { SessionDescription } from "../stated/session.ts";
import { cautionQuestions, changeQuestions, questionsFor } from "./caution-questions.ts";
import { dayOf } from "./days.ts";
import { isOnDay, type KneeDay } from "./knee-day.ts";

/** Whether what was not asked was stated to be not known. */
type NotKnown = Exclude<CautionAnswers, GivenAnswers>;

/** What was answered for a session's day. */
export interface AnsweredCautions {
  /** The answers that count, in the order in which they were written. */
  readonly given: readonly GivenAnswers[];
  /** What was said of the knee's response to the session before; it answers no question of the day. */
  readonly responses: readonly GivenAnswers[];
  /** Answers that do not count: they are about another day. */
  readonly ofOtherDays: readonly GivenAnswers[];
  /** Who stated, after the day, that the rest is not known. */
  readonly notKnown?: NotKnown;
  /** How often each question was answered against jumping. */
  readonly against: readonly { readonly name: CautionName; readonly times: number }[];
  /** Questions, and readings in words, that the first asking leaves open. */
  readonly openAtFirst: readonly string[];
  /** The same of the asking before the first single-leg or drop test. */
  readonly openAtChange: readonly string[];
}

/** What the answers of a session come to. An answer against jumping stays, whatever is answered later. */
export function answeredCautions(description: SessionDescription, day: KneeDay): AnsweredCautions {
  const all = description.cautions?.answers ?? [];
  const stated = all.filter((each): each is GivenAnswers => "asked" in each);
  const ofDay = stated.filter((each) => isOnDay(each.meant, description.date));
  const given = ofDay.filter(isAsking);
  // What was said against jumping stays with the session, whatever day its date is corrected to.
  const asked = stated.filter(isAsking);
  const notKnown = all.find((each): each is NotKnown => "notKnown" in each && !isMadeLive(each, description.date));
  const injured = description.involved !== "none";
  return {
    given,
    responses: ofDay.filter(({ asked }) => asked === "response"),
    ofOtherDays: stated.filter((each) => !ofDay.includes(each)),
    ...(notKnown === undefined ? {} : { notKnown }),
    against: cautionNames
      .map((name) => ({
        name,
        times: asked.filter(({ answers }) => answers[name] === cautionQuestions[name].speaksAgainst).length,
      }))
      .filter(({ times }) => times > 0),
    openAtFirst: notKnown === undefined ? openAtFirst(given, day, injured) : [],
    openAtChange: notKnown === undefined ? openAtChange(given, description, injured) : [],
  };
}

function isAsking({ asked }: GivenAnswers): boolean {
  return asked !== "response";
}

/** "Not known" is for a past session; stated on its own day it opens nothing. */
function isMadeLive({ written }: NotKnown, date: string | undefined): boolean {
  return written !== undefined && date !== undefined && dayOf(written) <= dayOf(date);
}

function openAtFirst(given: readonly GivenAnswers[], day: KneeDay, injured: boolean): readonly string[] {
  const asked = questionsFor(injured).filter((name) => cautionQuestions[name].closes !== "nothing");
  return [
    ...(day.painRead ? [] : ["pain"]),
    ...(injured && !day.effusionRead ? ["effusion"] : []),
    ...asked.filter((name) => given.every(({ answers }) => answers[name] === undefined)).map(askedWords),
  ];
}

function openAtChange(
  given: readonly GivenAnswers[],
  { readings = [], date }: SessionDescription,
  injured: boolean,
): readonly string[] {
  const change = given.filter(({ asked }) => asked === "change");
  const during = readings.filter(({ moment, meant }) => moment === "during" && isOnDay(meant, date));
  return [
    ...(during.some(({ pain }) => pain !== undefined) ? [] : ["pain"]),
    ...(!injured || during.some(({ effusion }) => effusion !== undefined) ? [] : ["effusion"]),
    ...(injured ? changeQuestions : [])
      .filter((name) => change.every(({ answers }) => answers[name] === undefined))
      .map(askedWords),
  ];
}

/** What a question is about, in a list of open ones. */
function askedWords(name: CautionName): string {
  const names: Readonly<Record<CautionName, string>> = {
    feverOrWound: "fever or wound",
    givingWay: "giving way",
    locking: "locking",
    newInjuryOrIllness: "new injury or illness",
    calfPainOrBreathlessness: "calf pain or breathlessness",
    restriction: "the surgeon's restriction",
    landingPractice: "landing practice",
    painkiller: "painkiller or injection",
  };
  return names[name];
}
