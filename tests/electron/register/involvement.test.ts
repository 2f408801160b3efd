import { join } from "node:path";
import { describe, expect, test } from "vitest";
import {
  involvedSideAt,
  isFromBefore,
  isInvolved,
  otherInjuriesAt,
  type RecordedInjury,
} from "../../../core/sides/involvement.ts";
import { mergeArchive } from "../../../electron/register/archive/merge-archive.ts";
import { writeArchive } from "../../../electron/register/archive/write-archive.ts";
import { recordSchemas } from "../../../electron/register/record-schemas.ts";
import { descriptionOf } from "../../../electron/register/session-conversion.ts";
import { athleteId, temporaryFolder, testRegister } from "./register-world.ts";

const ligament: RecordedInjury = { side: "right", date: "2026-01-17", bodyPart: "knee", involved: true };
const ankle: RecordedInjury = {
  side: "left",
  date: "2026-11-16",
  until: "2027-01-31",
  bodyPart: "ankle",
  involved: false,
  structure: "sprain",
};
/** As the first registers kept them: no body part, no mark. */
const asBefore: readonly RecordedInjury[] = [
  { side: "right", date: "2026-01-17" },
  { side: "right", date: "2026-03-12" },
  { side: "left", date: "2026-09-01" },
];

describe("the involved side", () => {
  test("is what a person marked: an ankle of the other leg does not make both knees", () => {
    expect(involvedSideAt([ligament, ankle], "2026-12-14")).toBe("right");
    expect(involvedSideAt([ligament, { ...ankle, involved: true }], "2026-12-14")).toBe("both");
    expect(involvedSideAt([ankle], "2026-12-14")).toBeUndefined();
  });

  test("begins and ends with its days, both included", () => {
    const marked = { ...ligament, involvedFrom: "2026-02-01", until: "2026-06-30" };
    const days = ["2026-01-31", "2026-02-01", "2026-06-30", "2026-07-01"];
    expect(days.map((day) => involvedSideAt([marked], day))).toEqual(["none", "right", "right", "none"]);
    expect(involvedSideAt([marked], undefined)).toBe("none");
    expect(involvedSideAt([ligament], undefined)).toBe("right");
    // An operation whose day nobody knows counts on every day.
    const { date: _unknown, ...undated } = ligament;
    expect(involvedSideAt([undated], "2020-01-01")).toBe("right");
  });

  test("is not known where nobody has said anything, and nobody's only where that was stated", () => {
    expect(involvedSideAt([], "2026-12-14")).toBeUndefined();
    expect(involvedSideAt([], undefined)).toBeUndefined();
    expect(involvedSideAt([], "2026-12-14", true)).toBe("none");
    // An injury outweighs the statement from before it.
    expect(involvedSideAt([ligament], "2026-12-14", true)).toBe("right");
  });

  test("of records from before there were marks follows from their sides and dates as it did", () => {
    expect(asBefore.every(isFromBefore) && asBefore.every(isInvolved)).toBe(true);
    expect(involvedSideAt(asBefore, "2025-08-19")).toBe("none");
    expect(involvedSideAt(asBefore, "2026-01-17")).toBe("right");
    expect(involvedSideAt(asBefore, "2026-12-01")).toBe("both");
    expect(involvedSideAt(asBefore, undefined)).toBe("both");
    expect(otherInjuriesAt(asBefore, "2026-12-01")).toEqual([]);
  });
});

test("An injury that involves no side is a caution on its limb for as long as it lasts", () => {
  const days = ["2026-11-15", "2026-11-16", "2027-01-31", "2027-02-01"];
  expect(days.map((day) => otherInjuriesAt([ligament, ankle], day).length)).toEqual([0, 1, 1, 0]);
  expect(otherInjuriesAt([ankle], "2026-12-14")).toEqual([
    { side: "left", bodyPart: "ankle", what: "sprain", date: "2026-11-16" },
  ]);
});

describe("a session of the register", () => {
  const described = async (
    records: (add: { injury: (content: object) => void }, athlete: { nobody: (day: string) => void }) => void,
  ) => {
    const register = await testRegister();
    const athlete = register.writes.act("athlete added", (set) => set.add("athletes", {}, { code: "A-1" }));
    const add = {
      injury: (content: object) =>
        register.writes.act("injury or operation changed", (set) =>
          set.add("injuries", { athlete }, recordSchemas.injuries.parse(content)),
        ),
    };
    const nobody = (day: string) =>
      register.writes.act("athlete changed", (set) =>
        set.change("athletes", athlete, { code: "A-1", nobodyInjured: day }),
      );
    records(add, { nobody });
    const session = register.writes.act("session added", (set) =>
      set.add("sessions", { athlete }, { folder: "x", date: "2026-12-14" }),
    );
    return { register, description: descriptionOf(register.reads.describedSession(session)!) };
  };
  const knee = { side: "right", structure: "anterior cruciate ligament", date: "2026-01-17" };

  test("has the involved side and the other injuries of that day", async () => {
    const { description } = await described(({ injury }) => {
      injury({ ...knee, bodyPart: "knee", involved: true });
      injury({ ...ankle, structure: "sprain" });
    });
    expect(description.involved).toBe("right");
    expect(description.otherInjuries).toEqual([
      { side: "left", bodyPart: "ankle", what: "sprain", date: "2026-11-16" },
    ]);
  });

  test("and its athlete's line say nothing where nothing was stated, and nobody where that was", async () => {
    const silent = await described(() => undefined);
    expect(silent.description.involved).toBeUndefined();
    expect(silent.register.reads.athletes()[0]).not.toHaveProperty("involved");
    expect(silent.register.reads.athletes({ involved: "none" })).toEqual([]);
    const stated = await described((_add, { nobody }) => nobody("2026-11-09"));
    expect(stated.description.involved).toBe("none");
    expect(stated.register.reads.athletes({ involved: "none" })).toHaveLength(1);
  });

  test("whose injury was recorded before there were body parts reads as it did", async () => {
    const { description } = await described(({ injury }) => injury(knee));
    expect(description.involved).toBe("right");
    expect(description).not.toHaveProperty("otherInjuries");
  });
});

test("Body part, mark and dates travel in archives, beside records from before that have none", async () => {
  const register = await testRegister();
  const athlete = register.writes.act("athlete added", (set) =>
    set.add("athletes", {}, { code: "A-1", nobodyInjured: "2025-01-02" }),
  );
  const operation = { side: "left", procedure: "repair", date: "2026-03-12", sideConfirmed: "left" } as const;
  register.writes.act("injury or operation changed", (set) => {
    set.add("injuries", { athlete }, recordSchemas.injuries.parse(ankle));
    set.add("injuries", { athlete }, { side: "right", structure: "ligament", date: "2026-01-17" });
    set.add("operations", { athlete }, { ...operation, bodyPart: "knee", involved: true, involvedFrom: "2026-03-01" });
  });
  const path = join(temporaryFolder(), "all.counterpoise");
  writeArchive(register, path);
  const other = await testRegister();
  await mergeArchive(other, path);
  const contents = (of: typeof register) => {
    const page = of.reads.athletePage(athleteId(of, "A-1"))!;
    return [page.athlete, ...page.injuries, ...page.operations].map(({ id, content }) => [id, content]);
  };
  expect(contents(other)).toEqual(contents(register));
  expect(other.reads.athletes()[0]?.involved).toBe("both");
});
