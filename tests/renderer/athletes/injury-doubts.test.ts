import { describe, expect, test } from "vitest";
import type { RecordContent } from "../../../electron/register/record-schemas.ts";
import type { AthletePage } from "../../../electron/register/register-views.ts";
import { athleteFacts } from "../../../renderer/athletes/athlete-facts.ts";
import { asksWhetherInjured, operationsOnOtherSide } from "../../../renderer/athletes/injury-doubts.ts";

const knee = { bodyPart: "knee", involved: true } as const;
const injury: RecordContent<"injuries"> = { side: "right", structure: "ligament", date: "2026-01-17", ...knee };
const operation: RecordContent<"operations"> = { side: "left", procedure: "repair", date: "2026-03-12", ...knee };

interface Told {
  readonly injuries?: readonly RecordContent<"injuries">[];
  readonly operations?: readonly RecordContent<"operations">[];
  readonly athlete?: Partial<RecordContent<"athletes">>;
  readonly sessions?: readonly Partial<RecordContent<"sessions">>[];
}

function page({ injuries = [], operations = [], athlete = {}, sessions = [] }: Told): AthletePage {
  const stored = (kind: string, content: object, at: number) => ({
    kind,
    id: `${kind} ${at}`,
    references: {},
    binned: false,
    content,
  });
  return {
    athlete: stored("athletes", { code: "A-1", ...athlete }, 0),
    injuries: injuries.map((each, at) => stored("injuries", each, at)),
    operations: operations.map((each, at) => stored("operations", each, at)),
    sessions: sessions.map((each, at) => ({
      session: stored("sessions", { folder: "x", ...each }, at),
      recordings: [],
      trials: [],
    })),
    enteredFindings: [],
    consents: [],
    decisions: [],
  } as unknown as AthletePage;
}

describe("different sides of injury and operation", () => {
  const asked = (told: Told) => operationsOnOtherSide(page(told)).length;

  test("are asked about until one is corrected or both are confirmed", () => {
    expect(asked({ injuries: [injury], operations: [operation] })).toBe(1);
    expect(asked({ injuries: [injury], operations: [{ ...operation, side: "right" }] })).toBe(0);
    expect(asked({ injuries: [injury], operations: [{ ...operation, sideConfirmed: "left" }] })).toBe(0);
    // Confirmed for the side it was on; it is on the other one now.
    expect(
      asked({
        injuries: [{ ...injury, side: "left" }],
        operations: [{ ...operation, side: "right", sideConfirmed: "left" }],
      }),
    ).toBe(1);
  });

  test("are no question where that side has an injury of its own, another part or nothing involved", () => {
    expect(asked({ injuries: [injury, { ...injury, side: "left" }], operations: [operation] })).toBe(0);
    expect(asked({ injuries: [{ ...injury, bodyPart: "ankle" }], operations: [operation] })).toBe(0);
    expect(asked({ injuries: [injury], operations: [{ ...operation, involved: false }] })).toBe(0);
    expect(asked({ operations: [operation] })).toBe(0);
  });

  test("are asked about in records from before there were body parts too", () => {
    const before = { injuries: [{ side: "right", structure: "ligament", date: "2026-01-17" }] } as const;
    expect(asked({ ...before, operations: [{ side: "left", procedure: "repair", date: "2026-03-12" }] })).toBe(1);
  });
});

describe("whether anybody is injured", () => {
  test("is asked until a record, a statement or a session says it", () => {
    expect(asksWhetherInjured(page({}))).toBe(true);
    expect(asksWhetherInjured(page({ injuries: [{ ...injury, bodyPart: "ankle", involved: false }] }))).toBe(true);
    expect(asksWhetherInjured(page({ injuries: [injury] }))).toBe(false);
    expect(asksWhetherInjured(page({ athlete: { nobodyInjured: "2026-11-09" } }))).toBe(false);
    expect(asksWhetherInjured(page({ sessions: [{ involved: "none" }] }))).toBe(false);
  });

  test("is told on the athlete's line only where it was stated", () => {
    expect(athleteFacts(page({}), "2026-12-01")).toBe("");
    expect(athleteFacts(page({ athlete: { nobodyInjured: "2026-11-09" } }), "2026-12-01")).toBe(
      "nobody injured, as stated",
    );
    expect(athleteFacts(page({ injuries: [injury] }), "2026-12-01")).toBe("right side involved");
    const over = { ...injury, until: "2026-06-30" };
    expect(athleteFacts(page({ injuries: [over] }), "2026-12-01")).toBe("no side involved on this day");
  });
});
