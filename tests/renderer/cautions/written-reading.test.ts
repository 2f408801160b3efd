import { describe, expect, test } from "vitest";
import { cautionAdditionSchema } from "../../../electron/cautions/caution-addition.ts";
import { noReading, readingFrom, type WrittenReading } from "../../../renderer/cautions/written-reading.ts";

const date = "2026-11-26";
const thatMorning = new Date(2026, 10, 26, 10, 30);
const aWeekLater = new Date(2026, 11, 3, 9, 0);
const during: WrittenReading = { ...noReading(date, "K. L.", thatMorning), moment: "during", pain: "2,5" };

const readingsOf = (written: WrittenReading, now = thatMorning) => {
  const read = readingFrom(written, date, now);
  if ("problem" in read) throw new Error(read.problem);
  return cautionAdditionSchema.parse(read.addition).readings;
};

describe("a reading", () => {
  test("of today carries the time of day, and nothing of it is supposed beforehand", () => {
    expect(noReading(date, "", thatMorning)).toMatchObject({ moment: "", clock: "10:30", pain: "", effusion: "" });
    expect(readingsOf(during)).toEqual([
      { moment: "during", meant: "2026-11-26T10:30", by: "K. L.", pain: 2.5, where: "knee" },
    ]);
  });

  test("of a session that is over is the next day's unless another moment is chosen", () => {
    const written = { ...noReading(date, "K. L.", aWeekLater), pain: "4", effusion: "1+" };
    expect(readingsOf(written, aWeekLater)).toEqual([
      { moment: "nextDay", meant: "2026-11-27", by: "K. L.", pain: 4, where: "knee", effusion: "1+" },
    ]);
  });

  test("of pain in the other leg keeps the knee's effusion apart from it", () => {
    const readings = readingsOf({ ...during, where: "other leg", effusion: "trace" });
    expect(readings?.map(({ where, pain, effusion }) => [where, pain, effusion])).toEqual([
      ["other leg", 2.5, undefined],
      [undefined, undefined, "trace"],
    ]);
  });

  test.each([
    ["no moment", { moment: "" as const }],
    ["neither pain nor effusion", { pain: "" }],
    ["pain beyond ten", { pain: "11" }],
    ["nobody who read it", { by: " " }],
    ["a time that has not come", { clock: "23:59" }],
    ["a next day that has not come", { moment: "nextDay" as const }],
  ])("is not kept with %s", (_, changed) => {
    expect(readingFrom({ ...during, ...changed }, date, thatMorning)).toHaveProperty("problem");
  });

  test("is not kept as the next day's when it is of a week later", () => {
    const late = { ...during, moment: "nextDay" as const, day: "2026-12-03", clock: "" };
    expect(readingFrom(late, date, aWeekLater)).toHaveProperty(
      "problem",
      "The next day's reading is of one to 3 days after the session.",
    );
  });
});
