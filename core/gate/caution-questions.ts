import { type CautionName, cautionNames } from "../stated/gate-words.ts";

/** One question, what its answer does, and the words for it. */
export interface CautionQuestion {
  /** As it is asked; never with a double negative. */
  readonly question: string;
  /** The answer that closes a gate or is a caution. */
  readonly speaksAgainst: "yes" | "no";
  /** What such an answer closes; `nothing`: it is printed only. */
  readonly closes: "all tests" | "single-leg and drop tests" | "nothing";
  /** Such an answer in words, without a full stop: "fever or a wound problem". */
  readonly words: string;
  /** True where the jump tests stay closed without a doctor who agreed. */
  readonly needsDoctor: boolean;
  /** True where the session stops for a medical assessment. */
  readonly stopsForAssessment: boolean;
  /** False where it is about an injured knee, so that it is not asked where nobody is injured. */
  readonly askedOfUninjured: boolean;
}

const closing = (question: string, words: string, more: Partial<CautionQuestion> = {}): CautionQuestion => ({
  question,
  words,
  speaksAgainst: "yes",
  closes: "all tests",
  needsDoctor: true,
  stopsForAssessment: false,
  askedOfUninjured: false,
  ...more,
});

/** The usual cautions for jump testing after knee surgery (common practice), in the order of asking. */
export const cautionQuestions: Readonly<Record<CautionName, CautionQuestion>> = {
  feverOrWound: closing("Fever, or a problem of the wound?", "fever or a problem of the wound", {
    stopsForAssessment: true,
  }),
  givingWay: closing("Has the knee given way since the last visit?", "the knee has given way"),
  locking: closing("Has the knee locked since the last visit?", "the knee has locked"),
  newInjuryOrIllness: closing("A new injury or illness?", "a new injury or illness", { askedOfUninjured: true }),
  calfPainOrBreathlessness: closing("Pain in the calf, or breathlessness?", "pain in the calf or breathlessness", {
    stopsForAssessment: true,
  }),
  restriction: closing("Does the surgeon restrict jumping or landing?", "the surgeon restricts jumping or landing", {
    askedOfUninjured: true,
  }),
  landingPractice: closing(
    "Has the athlete practised landing in the last two weeks?",
    "no practice in landing in the last two weeks",
    { speaksAgainst: "no", closes: "single-leg and drop tests", needsDoctor: false },
  ),
  painkiller: closing(
    "A painkiller or an injection in the last 24 hours?",
    "a painkiller or an injection in the last 24 hours",
    { closes: "nothing", needsDoctor: false },
  ),
};

/** What can have changed since the first asking, asked once more before the first single-leg or drop test. */
export const changeQuestions: readonly CautionName[] = ["givingWay"];

/** The questions that are asked of an athlete, in their order. */
export function questionsFor(injured: boolean): readonly CautionName[] {
  return cautionNames.filter((name) => injured || cautionQuestions[name].askedOfUninjured);
}
