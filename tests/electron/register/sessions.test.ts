import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { SessionDescription } from "../../../core/stated/session.ts";
import { sessionSchema } from "../../../core/stated/session.ts";
import { recordingFile } from "../../../electron/files/stored-session.ts";
import { describeSession } from "../../../electron/register/describe-session.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { descriptionOf } from "../../../electron/register/session-conversion.ts";
import { withTrialChange } from "../../../electron/workspace/session-edits.ts";
import { athleteId, filledRegister, foundSession, recordingBytes, secrets, testRegister } from "./register-world.ts";

const code = { code: secrets.code, name: secrets.name };

describe("a session", () => {
  test("imported again is there once; recordings it lacked join it, and what the register says stands", async () => {
    const register = await testRegister();
    const found = foundSession(code, 1);
    const { session } = importSession(register, found);
    describeSession(
      register,
      session,
      { ...register.reads.sessionInput(session)!.description, pain: 4 },
      "session changed",
    );
    expect(importSession(register, found)).toMatchObject({ outcome: "already there", recordings: 0, session });
    const more = { ...found, files: [...found.files, recordingFile("jump-4.csv", recordingBytes(99))] };
    expect(importSession(register, more)).toMatchObject({ outcome: "completed", recordings: 1, session });
    const input = register.reads.sessionInput(session)!;
    expect(input.description.pain).toBe(4);
    expect(input.files.map(({ path }) => path)).toEqual(["jump-1.csv", "jump-2.csv", "jump-3.csv", "jump-4.csv"]);
  });

  test("keeps a recording that was imported under a name that now has other bytes, and says so", async () => {
    const register = await testRegister();
    const found = foundSession(code, 1);
    const { session } = importSession(register, found);
    const other = { ...found, files: [recordingFile("jump-1.csv", recordingBytes(77))] };
    expect(importSession(register, other).notes).toEqual([
      "jump-1.csv differs from the recording of that name in the register, which was kept; the new one was left out.",
    ]);
    expect(register.reads.sessionInput(session)?.files).toEqual(found.files);
  });

  test("whose file contradicts the athlete's record keeps its own words, and the record stands", async () => {
    const register = await testRegister();
    importSession(register, foundSession({ ...code }, 1));
    const second = foundSession({ code: secrets.code, name: "Another Spelling" }, 2);
    const { session, notes } = importSession(register, second);
    expect(notes).toEqual([
      `The session's file gives another name for ${secrets.code} than the register; both were kept.`,
    ]);
    expect(register.reads.athletes()).toMatchObject([{ name: secrets.name, sessions: 2 }]);
    expect(register.reads.sessionInput(session)?.description).toEqual(second.description);
  });

  test("without an athlete is kept, and can be given to one", async () => {
    const register = await filledRegister();
    const { description: _none, ...bare } = foundSession(code, 7);
    const { session } = importSession(register, { ...bare, description: {} });
    expect(importSession(register, { ...bare, description: {} }).outcome).toBe("already there");
    const record = register.reads.record("sessions", session)!;
    const athlete = athleteId(register, secrets.code);
    register.writes.act("session changed", (changes) =>
      changes.change("sessions", session, record.content, { athlete }),
    );
    expect(register.reads.sessionInput(session)?.description).toEqual({ athlete: code });
    expect(register.reads.athletePage(athlete)?.sessions).toHaveLength(3);
  });
});

describe("what screens change in a description", () => {
  test("comes back from the register, with who saw and excluded a trial and when", async () => {
    const register = await testRegister();
    const { session } = importSession(register, foundSession(code, 1));
    const before = register.reads.sessionInput(session)!.description;
    const after = withTrialChange(before, "jump-3.csv", 1, { seen: true, excluded: { reason: "slipped" } }, [1]);
    describeSession(register, session, after, "trials changed");
    expect(register.reads.sessionInput(session)?.description).toEqual(after);
    const { trials } = register.reads.describedSession(session)!;
    expect(trials.find(({ content }) => content.seenBy === "tester")?.content).toMatchObject({
      number: 1,
      seenAt: expect.stringMatching(/^2026-11-02T/),
      excludedBy: "tester",
    });
    register.writes.undo();
    expect(register.reads.sessionInput(session)?.description).toEqual(before);
  });

  test("only touches the records that say something new", async () => {
    const register = await testRegister();
    const { session } = importSession(register, foundSession(code, 1));
    const before = register.reads.sessionInput(session)!.description;
    describeSession(register, session, before, "session changed");
    expect(register.writes.undoAction).toBe("recordings imported");
    describeSession(register, session, { ...before, massKg: 71 }, "session changed");
    const { journal } = register.contents;
    const [newest] = journal.readNewest(1);
    expect(journal.readChanges(newest!.sequence)?.map(({ kind }) => kind)).toEqual(["sessions"]);
  });

  test("keeps what a description cannot say: pain before and after, the next day, conditions", async () => {
    const register = await testRegister();
    const { session } = importSession(register, foundSession(code, 1));
    const { content } = register.reads.record("sessions", session)!;
    const rich = {
      ...content,
      pain: { before: 2, during: 3, after: 1, nextDay: 6 },
      effusion: { before: "none", after: "1+" },
      conditions: { arms: "hands on hips", painkillerWithin24Hours: false },
    } as const;
    register.writes.act("session changed", (changes) => changes.change("sessions", session, rich));
    const described = register.reads.sessionInput(session)!.description;
    // The worst of the day; the next day's is another day.
    expect(described).toMatchObject({ pain: 3, effusion: "1+" });
    describeSession(register, session, { ...described, note: "longer note" }, "session changed");
    expect(register.reads.record("sessions", session)?.content).toMatchObject({ ...rich, note: "longer note" });
  });

  const entry = fc.record(
    {
      file: fc.constantFrom("jump-1.csv", "jump-2.csv", "jump-3.csv", "elsewhere.csv"),
      trial: fc.integer({ min: 1, max: 3 }),
      test: fc.constantFrom("dropJump", "squatJump"),
      limb: fc.constantFrom("left", "right", "both"),
      seen: fc.boolean(),
      excluded: fc.record({ reason: fc.constantFrom("slipped", "arm swing") }),
      practice: fc.boolean(),
    },
    { requiredKeys: ["file"], noNullPrototype: true },
  );
  const description = fc.record(
    {
      date: fc.constant("2026-10-02"),
      pain: fc.integer({ min: 0, max: 10 }),
      effusion: fc.constantFrom("none", "trace", "1+"),
      involved: fc.constantFrom("left", "right", "both", "none"),
      stopped: fc.record({ reason: fc.constant("pain") }),
      cautions: fc.record({ answeredBy: fc.constant("the athlete"), date: fc.constant("2026-10-02") }),
      files: fc.array(entry, { minLength: 1, maxLength: 8 }),
    },
    { requiredKeys: [], noNullPrototype: true },
  );

  test("whatever it says, in whatever order its entries stand, the register gives back", async () => {
    const register = await testRegister();
    const { session } = importSession(register, { ...foundSession(code, 1), description: { athlete: code } });
    fc.assert(
      fc.property(description, (drawn) => {
        const said = { athlete: code, ...drawn } as SessionDescription;
        describeSession(register, session, said, "session changed");
        expect(descriptionOf(register.reads.describedSession(session)!)).toEqual(said);
        // A form can hand it back as what it began with.
        expect(sessionSchema.parse(said)).toEqual(said);
      }),
      { numRuns: 150 },
    );
    expect(register.verify().problems).toEqual([]);
  });
});

test("athletes are found by any part of code or name, in any case and with plain letters, and by every filter", async () => {
  const register = await testRegister();
  const people = [{ code: "A-1", name: "Åse Bjørklund" }, { code: "A-2", name: "Łucja Æreby" }, { code: "B-1" }];
  const ids = people.map((person) => register.writes.act("athlete added", (set) => set.add("athletes", {}, person)));
  const codes = (filter: Parameters<typeof register.reads.athletes>[0]) =>
    register.reads.athletes(filter).map((each) => each.code);
  expect(codes({ text: "bjork" })).toEqual(["A-1"]);
  expect(codes({ text: "LUCJA aere" })).toEqual(["A-2"]);
  expect(codes({ text: "-1" })).toEqual(["A-1", "B-1"]);
  register.writes.act("injury or operation changed", (set) => {
    set.add("operations", { athlete: ids[0]! }, { side: "left", procedure: "reconstruction", date: "2026-03-12" });
  });
  register.writes.act("session added", (set) =>
    set.add(
      "sessions",
      { athlete: ids[1]! },
      { folder: "x", date: "2026-05-01", milestone: "month 4", involved: "right" },
    ),
  );
  expect(codes({ involved: "left" })).toEqual(["A-1"]);
  expect(codes({ involved: "right" })).toEqual(["A-2"]);
  expect(codes({ operatedFrom: "2026-03-12", operatedTo: "2026-03-12" })).toEqual(["A-1"]);
  expect(codes({ operatedFrom: "2026-03-13" })).toEqual([]);
  expect(codes({ milestone: "Month 4" })).toEqual(["A-2"]);
  expect(codes({ lastSessionTo: "2026-04-30" })).toEqual([]);
  expect(codes({ lastSessionFrom: "2026-04-30" })).toEqual(["A-2"]);
});
