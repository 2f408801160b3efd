import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { Connection } from "../../../../electron/register/connection.ts";
import { contentsOf } from "../../../../electron/register/keys/contents.ts";
import { passphraseBytes, unwrapKey, type WrappedKey } from "../../../../electron/register/passphrase-key.ts";
import { readFact } from "../../../../electron/register/register-facts.ts";
import { verifyRegister } from "../../../../electron/register/verify-register.ts";
import { filesBelow } from "../register-world.ts";

/** Works on a copy of the register's whole folder, so that looking leaves what a stop left as it is. */
export function withCopyOf<Result>(file: string, work: (copy: string) => Result): Result {
  const folder = mkdtempSync(join(tmpdir(), "counterpoise-look-"));
  try {
    cpSync(dirname(file), folder, { recursive: true });
    return work(join(folder, basename(file)));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** What protects a register as a stop left it. */
export function protectionAt(file: string): WrappedKey | undefined {
  return withCopyOf(file, (copy) => {
    const connection = new Connection(copy);
    try {
      return readFact(connection, "protection");
    } finally {
      connection.close();
    }
  });
}

/** Each of these passphrases that opens it. */
export function openedBy(protection: WrappedKey, passphrases: readonly string[]): readonly string[] {
  return passphrases.filter((each) => unwrapKey(protection, passphraseBytes(each)) !== undefined);
}

/** Which words stand in the clear in which files of the register's folder. */
export function inTheClear(file: string, words: readonly (string | Uint8Array)[]): readonly string[] {
  const files = filesBelow(dirname(file));
  return words.flatMap((word) =>
    files
      .filter(({ bytes }) => bytes.includes(typeof word === "string" ? word : Buffer.from(word)))
      .map(({ path }) => `${typeof word === "string" ? word : "a recording"} stands in ${basename(path)}`),
  );
}

/**
 * Recordings as a register in the clear keeps them: a part of each that no other one has.
 * @param from the table `recordingBytes`, or a choice of its rows
 */
export function storedRecordings(file: string, from: string): readonly Uint8Array[] {
  return withCopyOf(file, (copy) => {
    const connection = new Connection(copy);
    try {
      // Behind what all recordings begin with; near enough to it to lie in one page.
      return connection
        .all(`SELECT substr(bytes, 65, 48) AS piece FROM ${from}`)
        .map(({ piece }) => piece as Uint8Array)
        .filter((piece) => piece.byteLength === 48);
    } finally {
      connection.close();
    }
  });
}

/** What is wrong with a copy of a register; its own file is only read. */
export function problemsOf(path: string, passphrase: string | undefined): readonly string[] {
  let connection: Connection | undefined;
  try {
    connection = new Connection(path, { readOnly: true });
    return problemsIn(connection, passphrase).map((problem) => `${basename(path)}: ${problem}`);
  } catch (error) {
    return [`${basename(path)}: ${String(error)}`];
  } finally {
    connection?.close();
  }
}

export function problemsIn(connection: Connection, passphrase: string | undefined): readonly string[] {
  const wrapped = readFact(connection, "protection");
  if (wrapped === undefined && passphrase !== undefined) return ["it is in the clear"];
  if (wrapped !== undefined && passphrase === undefined) return ["it is under a passphrase"];
  const key = wrapped && unwrapKey(wrapped, passphraseBytes(passphrase ?? ""));
  if (wrapped !== undefined && key === undefined) return ["it is under another passphrase"];
  const { store, journal, lines } = contentsOf(connection, key);
  return verifyRegister(store, journal, lines, true).problems;
}
