import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { describeSession } from "../../../electron/register/describe-session.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import type { RecordKind } from "../../../electron/register/record-schemas.ts";
import { recordKinds } from "../../../electron/register/record-tables.ts";
import type { Register } from "../../../electron/register/register.ts";
import { descriptionOf } from "../../../electron/register/session-conversion.ts";
import { athleteId, filledRegister, foundSession, secrets, testRegister } from "./register-world.ts";

/** Everything outside the bin, in one comparable text. */
function visible(register: Register): string {
  const all = recordKinds.flatMap((kind: RecordKind) => register.reads.records(kind));
  return JSON.stringify(all.toSorted((first, second) => (first.id < second.id ? -1 : 1)));
}

test("every action leaves one entry: what, when, and which user of the operating system", async () => {
  const register = await filledRegister();
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "NEW" }));
  const lines = register.reads.journal(10);
  expect(lines.map(({ action }) => action)).toEqual([
    "athlete added",
    "recordings imported",
    "recordings imported",
    "recordings imported",
    "register made",
  ]);
  expect(new Set(lines.map(({ who }) => who))).toEqual(new Set(["tester"]));
  expect(lines.map(({ at }) => at)).toEqual(
    lines
      .map(({ at }) => at)
      .toSorted()
      .toReversed(),
  );
});

test("an action that changes nothing leaves no entry, and one that is refused leaves nothing at all", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  const before = visible(register);
  const { content } = register.reads.record("athletes", id)!;
  register.writes.act("athlete changed", (changes) => changes.change("athletes", id, { ...content }));
  expect(() =>
    register.writes.act("athlete changed", (changes) => {
      changes.change("athletes", id, { ...content, sport: "handball" });
      changes.change("athletes", id, { ...content, birthYear: 3000 });
    }),
  ).toThrow("This cannot be kept among the athletes: birthYear");
  expect(visible(register)).toBe(before);
  expect(register.reads.journal(10)).toHaveLength(4);
});

describe("undo and redo", () => {
  test("take back and do again across athletes, sessions and trials, and the journal keeps all of it", async () => {
    const register = await filledRegister();
    const states = [visible(register)];
    const id = athleteId(register, secrets.code);
    const page = register.reads.athletePage(id)!;
    const [first] = page.sessions;
    register.writes.act("athlete changed", (changes) =>
      changes.change("athletes", id, { ...page.athlete.content, note: "new" }),
    );
    states.push(visible(register));
    const described = register.reads.describedSession(first!.session.id)!;
    const description = descriptionOf(described);
    describeSession(
      register,
      first!.session.id,
      { ...description, stopped: { reason: "pain 5/10" } },
      "session changed",
    );
    states.push(visible(register));
    register.writes.moveToBin({ kind: "athletes", id });
    states.push(visible(register));
    for (const state of states.toReversed().slice(1)) {
      register.writes.undo();
      expect(visible(register)).toBe(state);
    }
    for (const state of states.slice(1)) {
      register.writes.redo();
      expect(visible(register)).toBe(state);
    }
    expect(register.writes.undoAction).toBe("moved to the bin");
    expect(() => register.writes.redo()).toThrow("There is nothing to do again.");
    expect(register.reads.journal(20).filter(({ action }) => action === "undone")).toHaveLength(3);
    expect(register.verify().problems).toEqual([]);
  });

  test("an undone import lies in the bin with its bytes, and done again is as it was imported", async () => {
    const register = await testRegister();
    const { session } = importSession(register, foundSession({ code: secrets.code }, 1));
    const before = register.reads.sessionInput(session);
    register.writes.undo();
    expect(register.reads.athletes()).toEqual([]);
    expect(register.reads.bin().filter(({ kind }) => kind === "recordings")).toHaveLength(3);
    register.writes.redo();
    expect(register.reads.sessionInput(session)).toEqual(before);
  });

  test("any run of actions, undone in turn, ends where it began, and the chain holds", async () => {
    const filled = await filledRegister();
    filled.close();
    // Opened again there is nothing to undo yet.
    const register = await testRegister({ file: filled.file });
    const start = visible(register);
    const id = athleteId(register, secrets.code);
    const act = fc.constantFrom("note", "bin", "add", "session", "undo", "redo");
    fc.assert(
      fc.property(fc.array(act, { maxLength: 12 }), (actions) => {
        for (const [index, action] of actions.entries()) actOnce(register, id, action, index);
        while (register.writes.undoAction !== undefined) register.writes.undo();
        expect(visible(register)).toBe(start);
        expect(register.verify().problems).toEqual([]);
      }),
      { numRuns: 25 },
    );
  });
});

function actOnce(register: Register, athlete: string, action: string, index: number): void {
  const { writes } = register;
  const known = register.reads.record("athletes", athlete)!;
  if (action === "note")
    writes.act("athlete changed", (set) => set.change("athletes", athlete, { ...known.content, note: `n${index}` }));
  if (action === "bin") writes.moveToBin({ kind: "athletes", id: athlete });
  if (action === "add") writes.act("athlete added", (set) => set.add("athletes", {}, { code: `A${index}` }));
  if (action === "session")
    writes.act("session added", (set) => set.add("sessions", { athlete }, { folder: `f${index}` }));
  if (action === "undo" && writes.undoAction !== undefined) writes.undo();
  if (action === "redo" && writes.redoAction !== undefined) writes.redo();
}

describe("verification finds what was changed behind the program's back:", () => {
  const tampering: readonly (readonly [string, string, RegExp])[] = [
    [
      "a content of the journal",
      "UPDATE journalContents SET content = x'00112233445566778899aabbccddeeff7b7d' WHERE sequence = 3 AND part = 1",
      /Entry 3 of the journal was altered/,
    ],
    [
      "a time of the journal",
      "UPDATE journal SET at = '2020-01-01T00:00:00.000Z' WHERE sequence = 2",
      /Entry 2 of the journal breaks the chain/,
    ],
    [
      "a content of the journal gone",
      "DELETE FROM journalContents WHERE sequence = 2 AND part = 2",
      /lost a content that nobody erased/,
    ],
    ["a title gone", "DELETE FROM journalContents WHERE sequence = 2 AND part = 0", /has lost its title/],
    [
      "the newest entry gone",
      "PRAGMA foreign_keys = OFF; DELETE FROM journalContents WHERE sequence = 4; DELETE FROM journalParts WHERE sequence = 4; DELETE FROM journal WHERE sequence = 4",
      /entries are missing/,
    ],
    [
      "a record's content",
      'UPDATE athletes SET content = CAST(\'{"code":"OTHER"}\' AS BLOB)',
      /of athletes does not fit its checksum/,
    ],
    [
      "a session given to another athlete",
      "UPDATE sessions SET athlete = (SELECT max(id) FROM athletes)",
      /of sessions does not fit its checksum/,
    ],
    ["a record taken out of the bin", "UPDATE trials SET binned = 1", /of trials does not fit its checksum/],
    ["a trial gone", "DELETE FROM trials", /is in the journal but not in the register/],
    ["the bytes of a recording gone", "DELETE FROM recordingBytes", /no longer holds the bytes that were imported/],
    [
      "the bytes of two recordings swapped",
      "UPDATE recordingBytes SET bytes = (SELECT bytes FROM recordingBytes LIMIT 1), checksum = (SELECT checksum FROM recordingBytes LIMIT 1)",
      /no longer holds the bytes/,
    ],
    [
      "a reference to nothing",
      "PRAGMA foreign_keys = OFF; DELETE FROM recordings",
      /points at something that is not in the register/,
    ],
  ];
  test.each(tampering)("%s", async (_what, sql, sentence) => {
    const register = await filledRegister();
    expect(register.verify().problems).toEqual([]);
    register.connection.execute(sql);
    expect(register.verify().problems.join("\n")).toMatch(sentence);
  });
});
