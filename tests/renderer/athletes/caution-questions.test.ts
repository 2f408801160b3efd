import { describe, expect, test } from "vitest";
import { shippedProtocol } from "../../../core/protocol/shipped-protocols.ts";
import { affirmed, answeredCautions, noAnswers } from "../../../renderer/athletes/caution-questions.ts";
import { momentsAsked } from "../../../renderer/athletes/moments-asked.ts";

const at = { date: "2026-11-26", instant: "2026-11-26T09:30:00.000Z" };
const all = {
  ...noAnswers,
  pain: "1,5",
  effusion: "trace",
  fever: "no",
  givingWay: "no",
  restriction: "no",
  noPractice: "yes",
  answeredBy: " K. L. ",
};

describe("cautions", () => {
  test("become a record of who answered what and when", () => {
    const answered = answeredCautions(all, "session", at);
    expect(answered).toMatchObject({ pain: 1.5, effusion: "trace" });
    expect("caution" in answered && answered.caution).toMatchObject({
      before: "session",
      answeredBy: "K. L.",
      date: at.date,
      at: at.instant,
    });
    expect("caution" in answered && answered.caution.answers?.map(({ answer }) => answer)).toEqual([
      "1.5",
      "trace",
      "no",
      "no",
      "no",
      "yes",
    ]);
    expect(affirmed(all)).toEqual(["No practice in landing during the last two weeks?"]);
  });

  test.each([
    ["pain", ""],
    ["pain", "11"],
    ["pain", "-1"],
    ["effusion", ""],
    ["fever", ""],
    ["noPractice", ""],
    ["answeredBy", " "],
  ] as const)("are not kept while %s is “%s”", (name, value) => {
    expect(answeredCautions({ ...all, [name]: value }, "session", at)).toHaveProperty("problem");
  });
});

describe("when they are asked", () => {
  const moments = (id: string, cautions: Parameters<typeof momentsAsked>[2] = []) =>
    momentsAsked(shippedProtocol(id), [], cautions).map(({ moment, isDue }) => [moment, isDue]);

  test("before the session always, and again before single-leg and drop tests of its protocol", () => {
    expect(moments("return-to-running")).toEqual([["session", true]]);
    expect(moments("return-to-pivoting-sport")).toEqual([
      ["session", true],
      ["single-leg tests", false],
      ["drop tests", false],
    ]);
  });

  test("they are due no more when they were answered", () => {
    const answered = { before: "session", answeredBy: "K. L.", date: "2026-11-26" } as const;
    expect(moments("return-to-running", [answered])).toEqual([["session", false]]);
  });
});
