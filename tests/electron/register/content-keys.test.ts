import { expect, test } from "vitest";
import { numberOf } from "../../../electron/register/connection.ts";
import { eraseForGood } from "../../../electron/register/erasing/erase-for-good.ts";
import { keyIdIn } from "../../../electron/register/keys/field-protection.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { athleteId, filledRegister, secrets } from "./register-world.ts";

const passphrase = passphraseBytes("nine grey geese");

function keyIdOf(register: Register, athlete: string): string {
  const row = register.connection.one("SELECT keyId FROM contentKeys WHERE person = ?", athlete);
  return String(row?.keyId);
}

/** The keys that the records of a session, its recordings with their bytes and its trials are under. */
function keyIdsOfSession({ connection }: Register, session: string): ReadonlySet<string | undefined> {
  const rows = [
    ...connection.all("SELECT content AS bytes FROM sessions WHERE id = ?", session),
    ...connection.all("SELECT content AS bytes FROM recordings WHERE session = ?", session),
    ...connection.all(
      "SELECT bytes FROM recordingBytes WHERE recording IN (SELECT id FROM recordings WHERE session = ?)",
      session,
    ),
    ...connection.all(
      "SELECT content AS bytes FROM trials WHERE recording IN (SELECT id FROM recordings WHERE session = ?)",
      session,
    ),
  ];
  expect(rows.length).toBeGreaterThan(6);
  return new Set(rows.map((row) => keyIdIn(row.bytes as Uint8Array)));
}

async function protectedRegister(): Promise<Register> {
  const register = await filledRegister();
  setPassphrase(register, passphrase);
  return register;
}

test("each person's records and recordings are under that person's own key", async () => {
  const register = await protectedRegister();
  const athletes = register.reads.athletes().map(({ id }) => id);
  for (const athlete of athletes) {
    const sessions = register.reads.athletePage(athlete)?.sessions ?? [];
    expect(sessions.length).toBeGreaterThan(0);
    for (const { session } of sessions) {
      expect([...keyIdsOfSession(register, session.id)]).toEqual([keyIdOf(register, athlete)]);
    }
  }
  expect(new Set(athletes.map((each) => keyIdOf(register, each))).size).toBe(athletes.length);
});

test("a session given to another person comes under that person's key with all that hangs on it, and back again", async () => {
  const register = await protectedRegister();
  const [from, to] = [athleteId(register, secrets.code), athleteId(register, "ZR-0815")];
  const session = register.reads.athletePage(from)!.sessions[0]!.session;
  register.writes.act("session changed", (set) => set.change("sessions", session.id, session.content, { athlete: to }));
  expect([...keyIdsOfSession(register, session.id)]).toEqual([keyIdOf(register, to)]);
  register.writes.undo();
  expect([...keyIdsOfSession(register, session.id)]).toEqual([keyIdOf(register, from)]);
});

test("erasing a person destroys the key, and loses nothing of a session that was that person's before", async () => {
  const register = await protectedRegister();
  const [from, to] = [athleteId(register, secrets.code), athleteId(register, "ZR-0815")];
  const session = register.reads.athletePage(from)!.sessions[0]!.session;
  register.writes.act("session changed", (set) => set.change("sessions", session.id, session.content, { athlete: to }));
  const keyId = keyIdOf(register, from);
  register.writes.moveToBin({ kind: "athletes", id: from });
  eraseForGood(register, [{ kind: "athletes", id: from }]);
  expect(keyIdOf(register, from)).toBe("undefined");
  const { connection } = register;
  expect(numberOf(connection.one("SELECT count(*) AS n FROM contentKeys WHERE keyId = ?", keyId)!, "n")).toBe(0);
  register.close();
  const again = await openRegister(register.file, { passphrase });
  expect(again.verify().problems).toEqual([]);
  expect(again.reads.sessionInput(session.id)?.files).toHaveLength(3);
  again.close();
});

test("what is left under an erased person's key by mistake is written again before the key goes", async () => {
  const register = await protectedRegister();
  const [from, to] = [athleteId(register, secrets.code), athleteId(register, "ZR-0815")];
  const session = register.reads.athletePage(to)!.sessions[0]!.session;
  const { store } = register.contents;
  // As if a record had stayed behind: the key of the one holds the record of the other.
  const place = JSON.stringify([register.contents.id, "sessions", session.id, to, null, false, "content"]);
  const stray = store.protection.write(Buffer.from(JSON.stringify(session.content)), place, from);
  register.connection.run("UPDATE sessions SET content = ? WHERE id = ?", stray, session.id);
  expect(register.reads.record("sessions", session.id)?.content).toEqual(session.content);
  register.writes.moveToBin({ kind: "athletes", id: from });
  eraseForGood(register, [{ kind: "athletes", id: from }]);
  expect(register.reads.record("sessions", session.id)?.content).toEqual(session.content);
  expect(register.verify().problems).toEqual([]);
});

test("an action that is taken back leaves no key behind that later fields would be written under", async () => {
  const register = await protectedRegister();
  expect(() =>
    register.writes.act("athlete added", (changes) => {
      changes.add("athletes", {}, { code: "NOBODY" }, "00000000-0000-4000-8000-00000000000a");
      throw new Error("broken off");
    }),
  ).toThrow("broken off");
  register.writes.act("athlete added", (changes) =>
    changes.add("athletes", {}, { code: "SOMEBODY" }, "00000000-0000-4000-8000-00000000000a"),
  );
  register.close();
  const again = await openRegister(register.file, { passphrase });
  expect(again.verify().problems).toEqual([]);
  expect(again.reads.athletes().map(({ code }) => code)).toContain("SOMEBODY");
  again.close();
});
