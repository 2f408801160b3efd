import { describe, expect, test } from "vitest";
import { gateOf } from "../../../core/gate/gate.ts";
import { kneeDay } from "../../../core/gate/knee-day.ts";
import { nextDayConcerns } from "../../../core/gate/next-day.ts";
import { wantsAssessment } from "../../../core/gate/wants-assessment.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { answersOf, askedAndOpen, readingOf } from "./gates.ts";

const date = "2026-10-13";
const next = "2026-10-14";
const concerns = (...readings: NonNullable<SessionDescription["readings"]>) =>
  nextDayConcerns(kneeDay({ date, readings: [readingOf(date, "before", 1, "none"), ...readings] }));

describe("the knee's response a day later", () => {
  test("is asked about where it rose above the day's worst, not where it only stayed", () => {
    expect(concerns(readingOf(date, "during", 3, "trace"), readingOf(next, "nextDay", 3, "trace"))).toEqual([]);
    expect(concerns(readingOf(next, "nextDay", 2, "1+"))).toEqual([
      "pain rose from 1 to 2 of 10",
      "effusion rose from none to 1+",
    ]);
  });

  test("is asked about where nobody entered it", () => {
    expect(concerns()).toEqual(["pain was not entered", "effusion was not entered"]);
  });
});

describe("stopping for a medical assessment", () => {
  const gate = (changed: Parameters<typeof answersOf>[1]) =>
    gateOf(
      { date, involved: "right", ...askedAndOpen(date), cautions: { answers: [answersOf(date, changed)] } },
      defaultSettings,
    );

  test("is called for by fever, a wound, pain in the calf and breathlessness, and by nothing else", () => {
    expect(wantsAssessment(gate({ feverOrWound: "yes" }).closures)).toBe(true);
    expect(wantsAssessment(gate({ calfPainOrBreathlessness: "yes" }).closures)).toBe(true);
    expect(wantsAssessment(gate({ givingWay: "yes", locking: "yes", restriction: "yes" }).closures)).toBe(false);
  });
});
