import { expect, test } from "vitest";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import type { Register } from "../../../electron/register/register.ts";
import { setPassphrase } from "../../../electron/register/register-passphrase.ts";
import { filledRegister } from "./register-world.ts";

/** Alters the checksum of one row of each of these tables, and what verifying has to say of it. */
function alterChecksums(register: Register): readonly string[] {
  return ["athletes", "sessions", "recordings", "trials"].map((kind) => {
    const { id } = register.connection.one(`SELECT id FROM ${kind} LIMIT 1`)!;
    register.connection.run(`UPDATE ${kind} SET checksum = zeroblob(32) WHERE id = ?`, id!);
    return `Row ${id} of ${kind} does not fit its checksum.`;
  });
}

test("verifying names every row that does not fit its checksum", async () => {
  const register = await filledRegister();
  const sentences = alterChecksums(register);
  expect(register.verify().problems).toEqual(expect.arrayContaining([...sentences]));
});

test("under a passphrase it names them with the key, and without it", async () => {
  const register = await filledRegister();
  setPassphrase(register, passphraseBytes("nine grey geese"));
  const sentences = alterChecksums(register);
  expect(register.verify().problems).toEqual(expect.arrayContaining([...sentences]));
  register.lock();
  expect(register.verify().problems).toEqual(expect.arrayContaining([...sentences]));
});
