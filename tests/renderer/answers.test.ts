import { describe, expect, it } from "vitest";
import { proseFinding } from "../../core/ground/finding.ts";
import type { TableReading } from "../../core/recording/request.ts";
import { askedQuestions, columnsAnswer, rateFrom, readRole } from "../../renderer/recordings/answers.ts";
import { sessionChangeFrom, writtenSession } from "../../renderer/recordings/session-answers.ts";

type Columns = TableReading["columns"];

const column = (
  position: number,
  role: Columns[number]["role"],
  limb?: "left" | "right" | "both",
): Columns[number] => ({
  position,
  name: `c${position}`,
  role,
  unit: "",
  reason: "",
  confidence: "certain",
  ...(limb === undefined ? {} : { limb }),
});

describe("answers about columns", () => {
  const two = [column(1, "time"), column(2, "force", "left"), column(3, "force", "right"), column(4, "unused")];

  it("speak of all columns once one of them is another", () => {
    expect(columnsAnswer(two, 4, "total")).toEqual({ time: 1, left: 2, right: 3, total: 4 });
    expect(columnsAnswer(two, 3, "unused")).toEqual({ time: 1, left: 2 });
  });

  it("add two columns under one foot", () => {
    expect(columnsAnswer(two, 4, "right")).toEqual({ time: 1, left: 2, right: "3+4" });
  });

  it("say that the time column is not to be used, and know one time column only", () => {
    expect(columnsAnswer(two, 1, "unused")).toEqual({ time: "none", left: 2, right: 3 });
    expect(columnsAnswer(two, 4, "time")).toEqual({ time: 4, left: 2, right: 3 });
    expect(columnsAnswer(two.slice(1), 3, "unused")).toEqual({ left: 2 });
  });

  it("give the other of two unclear columns to the other foot, and leave three to be told apart", () => {
    const unknown = [column(1, "force"), column(2, "force")];
    expect(unknown.map(readRole)).toEqual(["unclear", "unclear"]);
    expect(columnsAnswer(unknown, 2, "left")).toEqual({ left: 2, right: 1 });
    expect(columnsAnswer([...unknown, column(3, "force")], 2, "left")).toEqual({ left: 2 });
  });
});

describe("answers about a file", () => {
  it("know a rate, written with a point or a comma, an emptied field and what is none", () => {
    expect(["600", " 600,5 ", ""].map(rateFrom)).toEqual([{ rateHz: 600 }, { rateHz: 600.5 }, { rateHz: null }]);
    expect(["fast", "0", "-5"].map((written) => "problem" in rateFrom(written))).toEqual([true, true, true]);
  });

  it("are asked for by the file's refusals, not by what is only noted", () => {
    const findings = [
      proseFinding("rate-missing", "refusal", "m", "a"),
      proseFinding("unit-not-stated", "refusal", "m", "a"),
      proseFinding("columns-unclear", "warning", "m", "a"),
    ];
    const view = { file: "a", byteLength: 1, outcome: "asks", findings, trials: 0, sameAs: [] } as const;
    expect([...askedQuestions(view)]).toEqual(["rate", "unit"]);
  });
});

describe("statements about a session", () => {
  const description = { athlete: { code: "X-1", sport: "handball" }, date: "2026-10-14" };
  const before = writtenSession(description);

  it("send only what was changed and keep what the form does not show", () => {
    const written = { ...before, name: "Invented Person", involved: "right" };
    expect(sessionChangeFrom(written, description, [])).toEqual({
      change: { athlete: { code: "X-1", sport: "handball", name: "Invented Person" }, involved: "right" },
    });
  });

  it("take away what was emptied", () => {
    expect(sessionChangeFrom({ ...before, date: "" }, description, [])).toEqual({
      change: { date: null },
    });
  });

  it("put both feet on their plates when one is stated", () => {
    expect(sessionChangeFrom({ ...before, leftFoot: "right" }, description, ["left", "right"])).toEqual({
      change: {
        plates: [
          { column: "right", foot: "left" },
          { column: "left", foot: "right" },
        ],
      },
    });
  });

  it("say the body mass, why the session was stopped and what the reason is about", () => {
    const written = { ...before, mass: "68,4", stopped: "pain 5 of 10", stopKind: "knee" };
    expect(sessionChangeFrom(written, description, [])).toEqual({
      change: {
        massKg: 68.4,
        stopped: { reason: "pain 5 of 10", kind: "knee" },
      },
    });
  });

  it("say when the knee was operated on, that the day is not known, and whether something was repaired", () => {
    const on = { ...before, operated: "on", operatedOn: "2026-03-12", repaired: "yes" };
    expect(sessionChangeFrom(on, description, [])).toEqual({
      change: { operation: { date: "2026-03-12", repaired: "yes" } },
    });
    expect(sessionChangeFrom({ ...on, operatedOn: "" }, description, [])).toEqual({
      problem: "Enter the date of the operation, or say that it is not known.",
    });
    const operated = { ...description, operation: { date: "2026-03-12", graft: "hamstring" } };
    const unknown = { ...writtenSession(operated), operated: "unknown" };
    expect(sessionChangeFrom(unknown, operated, [])).toEqual({ change: { operation: { graft: "hamstring" } } });
    expect(sessionChangeFrom({ ...unknown, operated: "" }, operated, [])).toEqual({ change: { operation: null } });
  });

  it("take a stop back when it is emptied", () => {
    const full = { ...description, stopped: { reason: "pain" } };
    expect(sessionChangeFrom({ ...writtenSession(full), stopped: "" }, full, [])).toEqual({
      change: { stopped: null },
    });
  });

  it("are sent back with a sentence where a mass is no athlete's", () => {
    const problem = (parts: Partial<typeof before>) => sessionChangeFrom({ ...before, ...parts }, description, []);
    expect(problem({ mass: "3" })).toHaveProperty("problem", expect.stringContaining("Body mass"));
    expect(problem({ mass: "heavy" })).toHaveProperty("problem", expect.stringContaining("Body mass"));
  });

  it("are sent back with a sentence when they cannot be meant", () => {
    expect(sessionChangeFrom(before, description, [])).toHaveProperty("problem");
    expect(sessionChangeFrom({ ...before, code: "", name: "Someone" }, description, [])).toHaveProperty("problem");
  });
});
