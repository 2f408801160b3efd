import { describe, expect, test } from "vitest";
import { sha256Of } from "../../../electron/register/checksum.ts";
import { importSession } from "../../../electron/register/import-sessions.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { readFact, registerId } from "../../../electron/register/register-facts.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { athleteId, filledRegister, foundSession, secrets, testRegister } from "./register-world.ts";

const passphrase = passphraseBytes("nine grey geese");

async function reopened({ file }: Register, word?: Uint8Array): Promise<Register> {
  return testRegister({ file, ...(word !== undefined && { passphrase: word }) });
}

/** Changes of every kind that the list speaks of. */
function changeMuch(register: Register): void {
  const id = athleteId(register, secrets.code);
  const other = athleteId(register, "ZR-0815");
  const { writes, reads } = register;
  const { content } = reads.record("athletes", id)!;
  writes.act("athlete changed", (set) => set.change("athletes", id, { ...content, name: "Sunniva T." }));
  writes.act("injury or operation changed", (set) => {
    set.add("operations", { athlete: id }, { side: "right", procedure: "reconstruction", date: "2026-03-12" });
  });
  const [first] = reads.athletePage(id)!.sessions;
  writes.act("session changed", (set) =>
    set.change("sessions", first!.session.id, { ...first!.session.content, date: "2027-01-05" }, { athlete: other }),
  );
  writes.undo();
  writes.redo();
  importSession(register, foundSession({ code: "NEW-1" }, 6));
  importSession(register, foundSession({ code: "NEW-2" }, 7));
  writes.moveToBin({ kind: "athletes", id: athleteId(register, "NEW-2") });
}

describe.each([
  ["a plain register", undefined],
  ["a register under a passphrase", passphrase],
])("the list in the file of %s", (_what, word) => {
  test("is in step after every change: opened again it is read from there and says what the records say", async () => {
    const register = await filledRegister();
    if (word !== undefined) setPassphrase(register, word);
    changeMuch(register);
    const before = register.reads.athletes();
    expect(register.contents.lines.inStep).toBe(true);
    expect(register.verify().problems).toEqual([]);
    // Opening that reads the list alone cannot tell of a session; reading or verifying it does.
    register.connection.execute("UPDATE sessions SET content = zeroblob(60)");
    register.close();
    const again = await reopened(register, word);
    expect(again.damage).toBeUndefined();
    expect(again.reads.athletes()).toEqual(before);
    expect(again.verify().problems.length).toBeGreaterThan(0);
  });

  test.each([
    ["is behind the journal", `UPDATE facts SET value = value WHERE name = 'nothing'`, true],
    ["was taken out", "DELETE FROM facts WHERE name = 'athleteLines'", false],
    ["lacks an athlete", "DELETE FROM athleteLines WHERE athlete = (SELECT min(athlete) FROM athleteLines)", false],
    ["is damaged", "UPDATE athleteLines SET content = zeroblob(60)", false],
  ])("is made anew from the records where it %s", async (_how, sql, isBehind) => {
    const register = await filledRegister();
    if (word !== undefined) setPassphrase(register, word);
    const before = register.reads.athletes();
    if (isBehind) register.contents.journal.append(new Date(), { action: "athlete changed", who: "tester" }, []);
    register.connection.execute(sql);
    register.close();
    const again = await reopened(register, word);
    expect(again.reads.athletes()).toEqual(before);
    expect(again.contents.lines.readAll()).toHaveLength(2);
    again.close();
    const third = await reopened(register, word);
    expect(third.damage).toBeUndefined();
    expect(third.contents.lines.inStep).toBe(true);
    expect(third.verify().problems).toEqual([]);
  });
});

test("a list that is damaged is said to be when the register is opened", async () => {
  const register = await filledRegister();
  register.connection.execute("UPDATE athleteLines SET content = zeroblob(60)");
  expect(register.verify().problems.join("\n")).toContain("The list's line of athlete");
  register.close();
  expect((await reopened(register)).damage).toContain("The list of athletes was damaged in the file and was made anew");
});

test("a list made while a record is damaged is not kept, so that each opening tells of the damage", async () => {
  const register = await filledRegister();
  register.connection.execute(
    "DELETE FROM athleteLines; UPDATE sessions SET content = zeroblob(60) WHERE rowid = 1; DELETE FROM facts WHERE name = 'athleteLines'",
  );
  register.close();
  for (const opening of [1, 2]) {
    const again = await reopened(register);
    expect(again.damage, `opening ${opening}`).toContain("One row of the register is damaged");
    expect(again.reads.athletes().map(({ sessions }) => sessions)).toEqual([1, 1]);
    // A change meanwhile writes no part of a list.
    again.writes.act("athlete added", (set) => set.add("athletes", {}, { code: `A-${opening}` }));
    again.writes.undo();
    again.close();
  }
});

test("verifying compares each line with the records, so that a line put there by another hand is found", async () => {
  const register = await filledRegister();
  const id = athleteId(register, secrets.code);
  const place = JSON.stringify([registerId(register.connection), "athleteLines", id, "content"]);
  const content = Buffer.from(JSON.stringify({ id, code: "FORGED", involved: "none", sessions: 0 }));
  register.connection.run(
    "UPDATE athleteLines SET content = ?, checksum = ? WHERE athlete = ?",
    content,
    sha256Of(place, content),
    id,
  );
  expect(register.verify().problems).toEqual([`The list's line of athlete ${id} is not what the records say.`]);
  expect(readFact(register.connection, "athleteLines")).toBeDefined();
});
