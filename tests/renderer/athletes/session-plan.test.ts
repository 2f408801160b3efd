import { expect, test } from "vitest";
import type { AthletePage } from "../../../electron/register/register-views.ts";
import {
  involvedInRegister,
  isInjured,
  lastAnsweredBy,
  planFrom,
  plannedFrom,
} from "../../../renderer/athletes/session-plan.ts";

const id = "00000000-0000-4000-8000-000000000000";
const stored = <Kind extends string, Content>(kind: Kind, content: Content) => ({
  kind,
  id,
  references: {},
  binned: false,
  content,
});

const page: AthletePage = {
  athlete: stored("athletes", { code: "GH-07" }),
  injuries: [stored("injuries", { side: "right", structure: "anterior cruciate ligament", date: "2026-01-17" })],
  operations: [
    stored("operations", {
      side: "right",
      procedure: "anterior cruciate ligament reconstruction",
      graft: "hamstring",
      date: "2026-03-12",
    }),
  ],
  sessions: [
    {
      session: stored("sessions", {
        folder: "a",
        date: "2026-10-13",
        place: "Grynnholm",
        tester: "K. L.",
        conditions: {
          arms: "on the hips",
          boxHeightMetres: 0.3,
          painkillerWithin24Hours: true,
          timeOfDay: "morning",
        },
      }),
      recordings: [],
      trials: [],
    },
  ],
  enteredFindings: [],
  consents: [],
  decisions: [],
};

test("the next session begins with last time's conditions, except those of the day", () => {
  const written = plannedFrom(page, "2026-11-26");
  expect(written).toMatchObject({ date: "2026-11-26", place: "Grynnholm", tester: "K. L." });
  expect(written.conditions).toMatchObject({
    arms: "on the hips",
    boxHeightMetres: "30",
    painkillerWithin24Hours: "",
    timeOfDay: "",
  });
});

test("what is written becomes the plan, with the protocol whole and the injury in words as of that day", () => {
  const begun = plannedFrom(page, "2026-11-26");
  const outcome = planFrom({ ...begun, mass: "68,6", protocol: "return-to-running" }, page);
  expect(outcome).toMatchObject({
    plan: {
      massKg: 68.6,
      injury: "right anterior cruciate ligament reconstruction, hamstring graft",
      conditions: { arms: "on the hips", boxHeightMetres: 0.3 },
      protocol: { id: "return-to-running" },
    },
  });
  const before = planFrom({ ...begun, date: "2026-02-01" }, page);
  expect("plan" in before && before.plan.injury).toBe("right anterior cruciate ligament");
  const healthy = planFrom({ ...begun, date: "2025-08-01" }, page);
  expect("plan" in healthy && healthy.plan.injury).toBeUndefined();
});

test("what cannot be meant is said", () => {
  const begun = plannedFrom(page, "2026-11-26");
  expect(planFrom({ ...begun, date: "" }, page)).toEqual({ problem: "The date of the session is missing." });
  expect(planFrom({ ...begun, mass: "680" }, page)).toHaveProperty("problem");
  const conditions = { ...begun.conditions, practiceJumps: "few" };
  expect(planFrom({ ...begun, conditions }, page)).toEqual({ problem: "Practice jumps is a number." });
});

test("who is injured follows the register by the day; only where it is silent is it asked, and only a statement is nobody", () => {
  const written = plannedFrom(page, "2026-11-26");
  expect(involvedInRegister(page, "2026-11-26")).toBe("right");
  expect(involvedInRegister(page, "2026-01-01")).toBe("none");
  expect(isInjured({ ...written, date: "2026-01-01" }, page)).toBe(false);
  const silent = { ...page, injuries: [], operations: [] };
  expect(involvedInRegister(silent, "2026-11-26")).toBeUndefined();
  expect(isInjured(written, silent)).toBe(true);
  expect(isInjured({ ...written, involved: "none" }, silent)).toBe(false);
  expect(planFrom({ ...written, involved: "none" }, silent)).toHaveProperty("plan.involved", "none");
  expect(planFrom({ ...written, involved: "none" }, page)).not.toHaveProperty("plan.involved");
});

test("who answers is carried over from the last answers, else from the last tester", () => {
  expect(lastAnsweredBy(page)).toBe("K. L.");
  const [first] = page.sessions;
  if (first === undefined) throw new Error("The page has a session.");
  const cautionAnswers = [{ notKnown: true, by: "Dr. N. Aas" }] as const;
  const answered = { ...first.session, content: { ...first.session.content, cautionAnswers } };
  expect(lastAnsweredBy({ sessions: [{ ...first, session: answered }] })).toBe("Dr. N. Aas");
  expect(lastAnsweredBy({ sessions: [] })).toBeUndefined();
});
