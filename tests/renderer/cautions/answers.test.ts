import { describe, expect, test } from "vitest";
import { cautionAdditionSchema } from "../../../electron/cautions/caution-addition.ts";
import {
  answeredCautions,
  noAnswers,
  questionsOf,
  spokenAgainst,
  type WrittenAnswers,
} from "../../../renderer/cautions/answers.ts";

const at = { asking: "session", injured: true, meant: "2026-11-26T09:30" } as const;
const all: WrittenAnswers = {
  ...noAnswers(" K. L. "),
  pain: "1,5",
  effusion: "trace",
  questions: {
    feverOrWound: "no",
    givingWay: "no",
    locking: "no",
    newInjuryOrIllness: "no",
    calfPainOrBreathlessness: "no",
    restriction: "no",
    landingPractice: "no",
    painkiller: "yes",
  },
};

describe("cautions", () => {
  test("become answers and readings with who and when, as the boundary takes them", () => {
    const answered = answeredCautions(all, at);
    if ("problem" in answered) throw new Error(answered.problem);
    expect(cautionAdditionSchema.parse(answered.addition)).toEqual(answered.addition);
    expect(answered.addition.answers).toMatchObject({
      asked: "session",
      by: "K. L.",
      answers: { landingPractice: "no" },
    });
    expect(answered.addition.readings).toMatchObject([
      { moment: "before", pain: 1.5, where: "knee" },
      { moment: "before", effusion: "trace" },
    ]);
    expect(spokenAgainst(all)).toEqual(["landingPractice", "painkiller"]);
  });

  test.each([
    ["pain", ""],
    ["pain", "11"],
    ["pain", "-1"],
    ["effusion", ""],
    ["by", " "],
  ] as const)("are not kept while %s is “%s”", (name, value) => {
    expect(answeredCautions({ ...all, [name]: value }, at)).toHaveProperty("problem");
  });

  test("are not kept while a question is open, or a restriction has no words", () => {
    const questions = { ...all.questions, locking: "" };
    expect(answeredCautions({ ...all, questions }, at)).toHaveProperty(
      "problem",
      "Not answered yet: Has the knee locked since the last visit?",
    );
    const restricted = { ...all, questions: { ...all.questions, restriction: "yes" } };
    expect(answeredCautions(restricted, at)).toHaveProperty("problem", expect.stringContaining("own words"));
  });

  test("are three before the first single-leg or drop test, and pain, illness and restriction where nobody is injured", () => {
    expect(questionsOf("change", true)).toEqual(["givingWay"]);
    expect(questionsOf("session", false)).toEqual(["newInjuryOrIllness", "restriction"]);
    const again = answeredCautions(
      { ...noAnswers("K. L."), pain: "2", effusion: "none", questions: { givingWay: "no" } },
      { ...at, asking: "change" },
    );
    expect(again).toMatchObject({ addition: { answers: { asked: "change" }, readings: [{ moment: "during" }, {}] } });
  });
});
