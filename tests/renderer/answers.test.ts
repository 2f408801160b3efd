import { describe, expect, it } from "vitest";
import { finding } from "../../core/finding.ts";
import type { TableReading } from "../../core/recording/request.ts";
import { answersFrom, askedQuestions, nothingWritten } from "../../renderer/recordings/answers.ts";
import { sessionChangeFrom, writtenSession } from "../../renderer/recordings/session-answers.ts";

const columns: TableReading["columns"] = [
  { position: 1, name: "a", role: "force", limb: "left", unit: "", reason: "", confidence: "certain" },
  { position: 2, name: "b", role: "force", limb: "right", unit: "", reason: "", confidence: "certain" },
];

describe("answers about a file", () => {
  it("send only what was stated", () => {
    expect(answersFrom({ ...nothingWritten, rate: "600", unit: "kN" }, columns)).toEqual({
      answers: { rateHz: 600, unit: "kN" },
    });
  });

  it("send the roles of all columns once one of them was changed", () => {
    const roles = new Map([[1, "right"] as const, [2, "left"] as const]);
    expect(answersFrom({ ...nothingWritten, roles }, columns)).toEqual({ answers: { columns: { right: 1, left: 2 } } });
  });

  it("are sent back with a sentence when they cannot be meant", () => {
    expect(answersFrom(nothingWritten, columns)).toHaveProperty("problem");
    expect(answersFrom({ ...nothingWritten, rate: "fast" }, columns)).toHaveProperty("problem");
    expect(answersFrom({ ...nothingWritten, roles: new Map([[1, "right"]]) }, columns)).toHaveProperty("problem");
  });

  it("are asked for by the file's findings", () => {
    const findings = [finding("rate-missing", "refusal", "m", "a"), finding("unit-not-stated", "refusal", "m", "a")];
    const view = { file: "a", byteLength: 1, outcome: "asks", findings, head: "", trials: 0, sameAs: [] } as const;
    expect([...askedQuestions(view)]).toEqual(["rate", "unit"]);
  });
});

describe("statements about a session", () => {
  const description = { athlete: { code: "X-1", sport: "handball" }, date: "2026-10-14", pain: 2 };
  const before = writtenSession(description);

  it("send only what was changed and keep what the form does not show", () => {
    const written = { ...before, name: "Invented Person", involved: "right" };
    expect(sessionChangeFrom(written, description, [])).toEqual({
      change: { athlete: { code: "X-1", sport: "handball", name: "Invented Person" }, involved: "right" },
    });
  });

  it("take away what was emptied", () => {
    expect(sessionChangeFrom({ ...before, date: "", pain: "" }, description, [])).toEqual({
      change: { date: null, pain: null },
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

  it("say the body mass, why the session was stopped and who answered the cautions when", () => {
    const cautions = { cautionsBy: "K. L.", cautionsDate: "2026-10-14", cautionsNote: "" };
    const written = { ...before, mass: "68,4", stopped: "pain 5 of 10", ...cautions };
    expect(sessionChangeFrom(written, description, [])).toEqual({
      change: {
        massKg: 68.4,
        stopped: { reason: "pain 5 of 10" },
        cautions: { answeredBy: "K. L.", date: "2026-10-14" },
      },
    });
  });

  it("take a stop and the cautions back when they are emptied", () => {
    const full = {
      ...description,
      stopped: { reason: "pain" },
      cautions: { answeredBy: "K. L.", date: "2026-10-14", note: "none" },
    };
    const emptied = { ...writtenSession(full), stopped: "", cautionsBy: "", cautionsDate: "", cautionsNote: "" };
    expect(sessionChangeFrom(emptied, full, [])).toEqual({ change: { stopped: null, cautions: null } });
  });

  it("are sent back with a sentence where part of the cautions is missing or a mass is no athlete's", () => {
    const problem = (parts: Partial<typeof before>) => sessionChangeFrom({ ...before, ...parts }, description, []);
    expect(problem({ cautionsBy: "K. L." })).toHaveProperty("problem", expect.stringContaining("day"));
    expect(problem({ cautionsDate: "2026-10-14" })).toHaveProperty("problem", expect.stringContaining("Who"));
    expect(problem({ mass: "3" })).toHaveProperty("problem", expect.stringContaining("Body mass"));
    expect(problem({ mass: "heavy" })).toHaveProperty("problem", expect.stringContaining("Body mass"));
  });

  it("are sent back with a sentence when they cannot be meant", () => {
    expect(sessionChangeFrom(before, description, [])).toHaveProperty("problem");
    expect(sessionChangeFrom({ ...before, pain: "11" }, description, [])).toHaveProperty("problem");
    expect(sessionChangeFrom({ ...before, code: "", name: "Someone" }, description, [])).toHaveProperty("problem");
  });
});
