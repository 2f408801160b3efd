import { randomBytes } from "node:crypto";
import { bytesOf, textOf } from "../../../electron/register/connection.ts";
import { decrypt } from "../../../electron/register/keys/encryption.ts";
import { readJournalKey } from "../../../electron/register/keys/journal-key.ts";
import { openRegister } from "../../../electron/register/open-register.ts";
import { passphraseBytes } from "../../../electron/register/passphrase-key.ts";
import { registerId } from "../../../electron/register/register-facts.ts";

/** What must not be found once the register is locked, and in which forms. */
export type Needles = ReadonlyMap<string, Uint8Array>;

export function newPassphrase(): string {
  return `geese ${randomBytes(9).toString("base64url")} pond ${randomBytes(9).toString("base64url")}`;
}

export function formsOfText(name: string, text: string): Needles {
  const bytes = Buffer.from(text, "utf8");
  return new Map([
    [`${name}, UTF-8`, bytes],
    [`${name}, UTF-16`, Buffer.from(text, "utf16le")],
    ...base64Forms(name, bytes),
  ]);
}

/** The passphrase, also a part of it: what is overwritten in part is not gone. */
export function formsOfPassphrase(passphrase: string): Needles {
  return new Map([
    ...formsOfText("passphrase", passphrase),
    ["half of the passphrase, UTF-8", halves(Buffer.from(passphrase))[1]],
  ]);
}

/** The keys of a register, read with its passphrase from the file itself. */
export async function keysOf(file: string, passphrase: string): Promise<Needles> {
  const register = await openRegister(file, { passphrase: passphraseBytes(passphrase), waitMilliseconds: 0 });
  try {
    const { dataKey, connection } = register;
    if (dataKey === undefined) throw new Error("The register is under no passphrase.");
    const id = registerId(connection);
    const needles = new Map(formsOfKey("data key", dataKey));
    const journalKey = readJournalKey(connection, id, dataKey);
    if (journalKey !== undefined) for (const form of formsOfKey("journal key", journalKey)) needles.set(...form);
    for (const [index, row] of connection.all("SELECT * FROM contentKeys").entries()) {
      const place = JSON.stringify([id, "contentKeys", textOf(row, "person"), textOf(row, "keyId")]);
      const key = decrypt(dataKey, bytesOf(row, "wrapped"), place);
      if (key === undefined) throw new Error("A content key cannot be unwrapped.");
      for (const form of formsOfKey(`content key ${index + 1}`, key)) needles.set(...form);
    }
    return needles;
  } finally {
    register.close();
  }
}

function formsOfKey(name: string, key: Uint8Array): Needles {
  const bytes = Buffer.from(key);
  const [first, second] = halves(bytes);
  return new Map([
    [`${name}, first half`, first],
    [`${name}, second half`, second],
    [`${name}, hexadecimal`, Buffer.from(bytes.toString("hex"))],
    ...base64Forms(name, bytes),
  ]);
}

/** Wherever the bytes begin within a longer base64 text, one of the three stands in it. */
function base64Forms(name: string, bytes: Buffer): readonly (readonly [string, Uint8Array])[] {
  return [0, 1, 2].map((offset) => {
    const whole = bytes.subarray(offset);
    const text = whole.subarray(0, whole.byteLength - (whole.byteLength % 3)).toString("base64");
    return [`${name}, base64 from byte ${offset}`, Buffer.from(text)];
  });
}

function halves(bytes: Buffer): readonly [Buffer, Buffer] {
  const middle = Math.floor(bytes.byteLength / 2);
  return [Buffer.from(bytes.subarray(0, middle)), Buffer.from(bytes.subarray(middle))];
}
