import { describe, expect, it, test } from "vitest";
import { closedFor, gateOf } from "../../../core/gate/gate.ts";
import { type Finding, finding } from "../../../core/ground/finding.ts";
import { defaultSettings, settingsWith } from "../../../core/settings/settings.ts";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { answersOf, askedAndOpen, changeAnswersOf, notKnown, readingOf } from "./gates.ts";

const date = "2026-10-13";
const asked: SessionDescription = { date, involved: "right", ...askedAndOpen(date) };
const twoLeg = { test: "countermovementJump", legs: "both" } as const;
const singleLeg = { test: "countermovementJump", legs: "single" } as const;
const singleDrop = { test: "dropJump", legs: "single" } as const;
const singleTrial = [{ test: "countermovementJump", limb: "left" }] as const;

/** A day with answers and readings, asked twice. */
function day(
  readings: SessionDescription["readings"] = [],
  more: Partial<SessionDescription> = {},
): SessionDescription {
  return { ...asked, readings: [...(asked.readings ?? []), ...(readings ?? [])], ...more };
}

describe("the gate", () => {
  it("is open where everything was asked and nothing speaks against jumping", () => {
    const gate = gateOf(asked, defaultSettings, [], singleTrial);
    expect(gate).toMatchObject({ open: true, closures: [], reason: "Read on the day: effusion none, pain 0 of 10." });
  });

  it("is not open where nobody asked, whatever else is stated", () => {
    for (const described of [{}, { date, involved: "right" }, { date, pain: 0, effusion: "none" }] as const) {
      const gate = gateOf(described, defaultSettings);
      expect(gate.open).toBe(false);
      expect(gate.closures.map(({ code }) => code)).toEqual(["cautions-not-asked"]);
    }
  });

  it("is not open where an old record says only that somebody asked", () => {
    const old = { date, pain: 1, effusion: "none", cautions: { answeredBy: "K. L.", date } } as const;
    expect(gateOf(old, defaultSettings)).toMatchObject({ open: false, closures: [{ code: "cautions-not-asked" }] });
  });

  it("opens where a person states that what was not asked of a past session is not known", () => {
    expect(gateOf({ date, ...notKnown }, defaultSettings, [], singleTrial).open).toBe(true);
  });

  it("stays closed where that is stated on the session's own day", () => {
    const live = { answers: [{ notKnown: true, by: "K. L.", written: `${date}T10:00:00+02:00` }] } as const;
    expect(gateOf({ date, cautions: live }, defaultSettings).open).toBe(false);
  });

  it("takes no answer of another day, and marks none of the day that was written later as missing", () => {
    const later = { ...answersOf(date), written: "2026-10-15T08:00:00+02:00" };
    const readings = [readingOf(date, "before", 0)];
    expect(gateOf({ date, cautions: { answers: [later] }, readings }, defaultSettings).open).toBe(true);
    const other = gateOf({ date, cautions: { answers: [answersOf("2026-10-12")] }, readings }, defaultSettings);
    expect(other.open).toBe(false);
    expect(other.answered.ofOtherDays).toHaveLength(1);
  });

  it("is closed by pain above the limit of two-leg jumps, and for single-leg and drop tests above the lower one", () => {
    expect(gateOf(day([readingOf(date, "during", 4)]), defaultSettings).open).toBe(false);
    const three = gateOf(day([readingOf(date, "during", 3)]), defaultSettings);
    expect([closedFor(three, twoLeg), three.open]).toEqual(["", true]);
    expect(closedFor(three, singleLeg)).toContain("Pain 3 of 10");
    expect(closedFor(three, singleDrop)).toContain("Pain 3 of 10");
    expect(gateOf(day([readingOf(date, "during", 4)]), settingsWith({ gatePain: 5 })).open).toBe(true);
  });

  it("keeps the worst reading of the day, whatever is read after it", () => {
    const gate = gateOf(
      day([readingOf(date, "before", 6, "1+"), readingOf(date, "after", 1, "none")]),
      defaultSettings,
    );
    expect(gate.reason).toContain("Pain 6 of 10");
    expect(gate.reason).toContain("Effusion 1+");
  });

  it("is not moved by what the knee says a day later", () => {
    const gate = gateOf(day([readingOf("2026-10-14", "nextDay", 7, "2+")]), defaultSettings);
    expect(gate).toMatchObject({ open: true, day: { nextDayPain: 7, nextDayEffusion: "2+", knee: 0 } });
  });

  it("closes tests that load the other leg where that one hurts, and none for pain elsewhere", () => {
    const hurts = (where: "other leg" | "elsewhere") =>
      gateOf(day([{ ...readingOf(date, "before", 5), where }]), defaultSettings);
    expect(closedFor(hurts("other leg"), singleLeg, ["right"])).toBe("");
    expect(closedFor(hurts("other leg"), singleLeg, ["left"])).toContain("in the other leg");
    expect(closedFor(hurts("other leg"), twoLeg)).toContain("in the other leg");
    expect(hurts("elsewhere").closures).toEqual([]);
  });

  it("is closed by a stop for the knee or the athlete, not for time or equipment", () => {
    const stop = (kind?: "knee" | "athlete" | "time" | "equipment") =>
      gateOf({ ...asked, stopped: { reason: "enough", ...(kind && { kind }) } }, defaultSettings).open;
    expect([stop("knee"), stop("athlete"), stop(), stop("time"), stop("equipment")]).toEqual([
      false,
      false,
      false,
      true,
      true,
    ]);
  });

  it("wants what can have changed asked before single-leg and drop tests count", () => {
    const once = { ...asked, cautions: { answers: [answersOf(date)] }, readings: [readingOf(date, "before", 0)] };
    const gate = gateOf(once, defaultSettings, [], singleTrial);
    expect([gate.open, closedFor(gate, twoLeg)]).toEqual([true, ""]);
    expect(closedFor(gate, singleLeg)).toContain("giving way");
    expect(gateOf(once, defaultSettings, [], [{ test: "countermovementJump", limb: "both" }]).closures).toEqual([]);
  });

  it("asks less of somebody uninjured, and nothing of a knee", () => {
    const cautions = { answers: [answersOf(date, { feverOrWound: "yes", givingWay: "yes" })] };
    const uninjured = { date, involved: "none", cautions, readings: [readingOf(date, "before", 0)] } as const;
    const { answers } = answersOf(date) as { answers: Record<string, "yes" | "no"> };
    const short = { ...answersOf(date), answers: { newInjuryOrIllness: "no", restriction: "no" } } as const;
    expect(Object.keys(answers)).toHaveLength(8);
    expect(gateOf({ ...uninjured, cautions: { answers: [short] } }, defaultSettings).open).toBe(true);
    expect(gateOf(uninjured, defaultSettings).open).toBe(false);
  });
});

describe("after an operation", () => {
  const operated = (operationDate: string | undefined, repaired?: "yes" | "no" | "not known") =>
    gateOf(
      {
        ...asked,
        operation: { ...(operationDate && { date: operationDate }), ...(repaired && { repaired }) },
      },
      defaultSettings,
    );

  it.each([
    // weeks before 13 October 2026, repaired, what is closed; weeks from PRODUCT's table (common practice)
    ["2026-08-04", "no", ["twoLegJump", "twoLegDropOrHops", "singleLegJump", "singleLegDrop"]],
    ["2026-07-21", "no", ["twoLegDropOrHops", "singleLegJump", "singleLegDrop"]],
    ["2026-07-21", "yes", ["twoLegJump", "twoLegDropOrHops", "singleLegJump", "singleLegDrop"]],
    ["2026-06-23", "no", ["singleLegDrop"]],
    ["2026-06-23", "not known", ["twoLegDropOrHops", "singleLegJump", "singleLegDrop"]],
    ["2026-04-28", "no", []],
    ["2026-04-28", "not known", ["singleLegDrop"]],
    ["2026-03-31", "yes", []],
    ["2026-11-01", "no", []],
  ] as const)("of %s with a repair: %s, it closes %j until their week", (operationDate, repaired, loads) => {
    expect(operated(operationDate, repaired).closures.map(({ loads: [load] }) => load)).toEqual(loads);
  });

  it("without a date it closes every jump until a named clinician decides", () => {
    expect(operated(undefined)).toMatchObject({ open: false, closures: [{ code: "operation-date-unknown" }] });
  });

  it("of nobody injured closes nothing", () => {
    const healthy = { ...asked, involved: "none", operation: {} } as const;
    expect(gateOf(healthy, defaultSettings).closures).toEqual([]);
  });
});

describe("a young athlete", () => {
  it.each([
    [2011, 2],
    [2010, 2],
    [2009, 0],
  ])("born %i has %i kinds of test closed on 13 October 2026: only the year is known", (birthYear, closed) => {
    const gate = gateOf({ ...asked, athlete: { code: "Y", birthYear } }, defaultSettings);
    expect(gate.closures.flatMap(({ loads }) => loads)).toHaveLength(closed);
    expect(gate.limits.landingsTwoLeg).toBe(closed > 0 ? 15 : 30);
  });
});

describe("the named clinician", () => {
  const opening = (code: string, level: number, doctor?: { name: string; date: string }) => ({
    by: "K. L.",
    reason: "the pain is old and known",
    meant: `${date}T10:00`,
    written: `${date}T10:01:00+02:00`,
    opens: [{ code, level }],
    ...(doctor && { doctor }),
  });

  it("opens what hurts, until it hurts more", () => {
    const at = (pain: number) =>
      gateOf(day([readingOf(date, "during", pain)], { gateOpenings: [opening("pain", 5)] }), defaultSettings);
    expect([at(5).open, at(5).opened.map(({ opening: { by } }) => by)]).toEqual([true, ["K. L."]]);
    expect(at(6).open).toBe(false);
  });

  it("opens an answer such as fever only together with a doctor", () => {
    const fever = {
      ...asked,
      cautions: { answers: [answersOf(date, { feverOrWound: "yes" }), changeAnswersOf(date)] },
    };
    const alone = gateOf({ ...fever, gateOpenings: [opening("fever-or-wound", 1)] }, defaultSettings);
    expect(alone.reason).toContain("medical assessment now");
    const doctor = { name: "Dr A. B.", date };
    expect(gateOf({ ...fever, gateOpenings: [opening("fever-or-wound", 1, doctor)] }, defaultSettings).open).toBe(true);
  });

  it("opens neither what nobody asked nor another day", () => {
    const unasked = { date, involved: "right", gateOpenings: [opening("cautions-not-asked", 1)] } as const;
    expect(gateOf(unasked, defaultSettings).open).toBe(false);
    const otherDay = { ...opening("pain", 9), meant: "2026-10-12T10:00" };
    expect(gateOf(day([readingOf(date, "during", 5)], { gateOpenings: [otherDay] }), defaultSettings).open).toBe(false);
  });
});

test.each(["Effusion", "efusion", "swelling", "painScore", "stoped", "reading", "caution", "limit", "operaton"])(
  "An entry called %s might have been meant to close the gate, so it does",
  (where) => {
    expect(gateOf(asked, defaultSettings, [unreadEntry(where)]).open).toBe(false);
  },
);

test("An unreadable entry that has nothing to do with the gate leaves it alone", () => {
  expect(gateOf(asked, defaultSettings, [unreadEntry("milestone")]).open).toBe(true);
});

function unreadEntry(path: string): Finding {
  return finding(
    "session-unreadable/entry",
    "warning",
    { path, expected: "text", found: "a list" },
    { place: { at: "name", name: path } },
  );
}
