import { describe, expect, test } from "vitest";
import type { RecordContent } from "../../../electron/register/record-schemas.ts";
import { lacksNextDay, lastResponseQuestion } from "../../../renderer/cautions/last-response.ts";
import { readingOf } from "../../core/gate/gates.ts";

const id = "00000000-0000-4000-8000-000000000000";
const date = "2026-11-02";

function sessionOf(content: Partial<RecordContent<"sessions">>, recordings = 1) {
  const stored = { id, references: {}, binned: false } as const;
  const recording = { path: "a.csv", sha256: "0".repeat(64), byteLength: 1 };
  return {
    session: { ...stored, kind: "sessions" as const, content: { folder: "a", date, ...content } },
    recordings: Array.from({ length: recordings }, () => ({
      ...stored,
      kind: "recordings" as const,
      content: recording,
    })),
    trials: [],
  };
}

const ask = (content: Partial<RecordContent<"sessions">>, recordings = 1) =>
  lastResponseQuestion({ sessions: [sessionOf(content, recordings)] }, "2026-11-26");

const day = [readingOf(date, "before", 1, "none"), readingOf(date, "during", 2, "none")];

describe("the day after the last session", () => {
  test("is asked about where pain or effusion rose above the day, or was never entered", () => {
    expect(ask({ readings: day })).toBe(
      "The day after the session of 2 Nov 2026 pain was not entered and effusion was not entered. What became of the knee?",
    );
    expect(ask({ readings: [...day, readingOf("2026-11-03", "nextDay", 4, "trace")] })).toBe(
      "The day after the session of 2 Nov 2026 pain rose from 2 to 4 of 10 and effusion rose from none to trace. What became of the knee?",
    );
  });

  test("asks nothing where it was entered and rose nowhere, or nobody jumped", () => {
    expect(ask({ readings: [...day, readingOf("2026-11-03", "nextDay", 2, "none")] })).toBe("");
    expect(ask({ readings: day }, 0)).toBe("");
    expect(lastResponseQuestion({ sessions: [sessionOf({ readings: day })] }, date)).toBe("");
  });

  test("reads what earlier versions kept by its moment alone", () => {
    const earlier = { pain: { during: 3, nextDay: 3 }, effusion: { before: "trace", nextDay: "trace" } } as const;
    expect(ask(earlier)).toBe("");
    expect(ask({ ...earlier, pain: { during: 1, nextDay: 3 } })).toContain("pain rose from 1 to 3 of 10");
  });

  test("is missing in the timeline only where it has come and somebody may be injured", () => {
    const later = new Date(2026, 10, 20);
    expect(lacksNextDay(sessionOf({ readings: day }), later)).toBe(true);
    expect(lacksNextDay(sessionOf({ readings: day }), new Date(2026, 10, 2))).toBe(false);
    expect(lacksNextDay(sessionOf({ readings: day, involved: "none" }), later)).toBe(false);
    expect(lacksNextDay(sessionOf({ readings: [readingOf("2026-11-03", "nextDay", 0)] }), later)).toBe(false);
  });
});
