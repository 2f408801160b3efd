import { expect, test } from "vitest";
import { checkCode } from "../../../electron/register/head-code.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { writeFact } from "../../../electron/register/register-facts.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { filledRegister } from "./register-world.ts";

const passphrase = passphraseBytes("nine grey geese");
const unsealed =
  "The journal's end does not carry its seal: entries were taken away or added by somebody without the passphrase.";

/** Takes the last two entries off the journal with the records they added, and ends the chain before them. */
function cutOff({ connection }: Register, seal?: string): void {
  const last = connection.all("SELECT sequence, hash FROM journal ORDER BY sequence DESC LIMIT 3");
  const [newest, before, head] = last;
  connection.execute("PRAGMA foreign_keys = OFF");
  for (const entry of [newest, before]) {
    const sequence = Number(entry!.sequence);
    for (const { record } of connection.all("SELECT record FROM journalParts WHERE sequence = ?", sequence)) {
      connection.run("DELETE FROM athletes WHERE id = ?", record as string);
    }
    for (const table of ["journalContents", "journalParts", "journal"]) {
      connection.run(`DELETE FROM ${table} WHERE sequence = ?`, sequence);
    }
  }
  const hash = Buffer.from(head!.hash as Uint8Array).toString("hex");
  writeFact(connection, "journalHead", { sequence: Number(head!.sequence), hash, ...(seal !== undefined && { seal }) });
}

async function twoMore(isProtected: boolean): Promise<Register> {
  const register = await filledRegister();
  if (isProtected) setPassphrase(register, passphrase);
  for (const code of ["LAST-1", "LAST-2"]) {
    register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code }));
  }
  return register;
}

test("under a passphrase, entries taken off the end with their records are found, whatever is written as the head", async () => {
  const register = await twoMore(true);
  expect(register.verify()).toMatchObject({ problems: [], isKeyed: true });
  cutOff(register);
  expect(register.verify().problems).toContain(unsealed);
  writeFact(register.connection, "journalHead", {
    ...(JSON.parse(
      Buffer.from(
        register.connection.one("SELECT value FROM facts WHERE name = 'journalHead'")!.value as Uint8Array,
      ).toString(),
    ) as { sequence: number; hash: string }),
    seal: "00".repeat(32),
  });
  expect(register.verify().problems).toContain(unsealed);
});

test("going on after such a cut does not seal it away", async () => {
  const register = await twoMore(true);
  cutOff(register);
  register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "AFTERWARDS" }));
  expect(register.verify().problems).toContain(unsealed);
});

test("the key that seals survives a change of passphrase", async () => {
  const register = await twoMore(true);
  setPassphrase(register, passphraseBytes("seven black swans"));
  register.lock();
  register.unlock(passphraseBytes("seven black swans"));
  expect(register.verify()).toMatchObject({ problems: [], isKeyed: true });
  cutOff(register);
  expect(register.verify().problems).toContain(unsealed);
});

test("without a passphrase the same cut is not found, and verifying says that it cannot be", async () => {
  const register = await twoMore(false);
  cutOff(register);
  expect(register.verify()).toMatchObject({ isKeyed: false });
  expect(register.verify().problems.filter((each) => each.includes("journal"))).toEqual([]);
});

test("a printed code finds the cut in any register, and fits as long as the journal holds what it was printed from", async () => {
  for (const isProtected of [false, true]) {
    const register = await twoMore(isProtected);
    const code = register.headCode!;
    expect(code).toMatch(/^\d+(-[0-9A-HJKMNP-TV-Z]{4}){3}$/);
    expect(checkCode(register.connection, code).fits).toBe(true);
    expect(checkCode(register.connection, ` ${code.toLowerCase().replaceAll("-", " ")}`).fits).toBe(true);
    register.writes.act("athlete added", (changes) => changes.add("athletes", {}, { code: "LATER" }));
    expect(register.headCode).not.toBe(code);
    expect(checkCode(register.connection, code)).toMatchObject({ fits: true });
    const other = code.endsWith("0") ? `${code.slice(0, -1)}1` : `${code.slice(0, -1)}0`;
    expect(checkCode(register.connection, other)).toMatchObject({ fits: false });
    cutOff(register);
    cutOff(register);
    expect(checkCode(register.connection, code)).toMatchObject({
      fits: false,
      sentence: expect.stringContaining("entries were taken away since the code was printed"),
    });
    expect(checkCode(register.connection, "seven").sentence).toContain("is no code of a journal");
  }
});
