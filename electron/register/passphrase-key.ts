import { randomBytes, scryptSync } from "node:crypto";
import { z } from "zod";
import type { SchemaType } from "../../core/ground/schema-type.ts";
import { decrypt, encrypt, keyBytes } from "./keys/encryption.ts";
import { passphraseCost } from "./passphrase-cost.ts";

export { passphraseBytes } from "./passphrase-bytes.ts";

/** How a key follows from a passphrase; not secret. */
export const derivationSchema = z.strictObject({
  method: z.literal("scrypt"),
  // Bounds keep a forged header from asking for all memory of the machine.
  N: z
    .int()
    .min(1024)
    .max(262_144)
    .refine((rounds) => Number.isInteger(Math.log2(rounds))),
  r: z.int().min(1).max(8),
  p: z.int().min(1).max(4),
  salt: z.base64(),
});

export type KeyDerivation = SchemaType<typeof derivationSchema>;

export function newDerivation(): KeyDerivation {
  return { method: "scrypt", ...passphraseCost, salt: randomBytes(16).toString("base64") };
}

/** The key of a passphrase, as `passphraseBytes` makes it; who asked for the key overwrites it after use. */
export function deriveKey(passphrase: Uint8Array, { N, r, p, salt }: KeyDerivation): Uint8Array {
  const maxmem = 256 * N * r;
  return scryptSync(passphrase, Buffer.from(salt, "base64"), keyBytes, { N, r, p, maxmem });
}

/** The data key of a register as it lies in the file: encrypted under the passphrase's key. */
export const wrappedKeySchema = z.strictObject({ derivation: derivationSchema, wrapped: z.base64() });

export type WrappedKey = SchemaType<typeof wrappedKeySchema>;

const place = (derivation: KeyDerivation) => JSON.stringify(["register data key", derivation]);

export function wrapKey(dataKey: Uint8Array, passphrase: Uint8Array): WrappedKey {
  const derivation = newDerivation();
  const wrapped = withKeyOf(passphrase, derivation, (key) => encrypt(key, dataKey, place(derivation)));
  return { derivation, wrapped: Buffer.from(wrapped).toString("base64") };
}

/** @returns undefined when the passphrase is another one, or the wrapped key was altered */
export function unwrapKey({ derivation, wrapped }: WrappedKey, passphrase: Uint8Array): Uint8Array | undefined {
  return withKeyOf(passphrase, derivation, (key) => decrypt(key, Buffer.from(wrapped, "base64"), place(derivation)));
}

function withKeyOf<Result>(
  passphrase: Uint8Array,
  derivation: KeyDerivation,
  work: (key: Uint8Array) => Result,
): Result {
  const key = deriveKey(passphrase, derivation);
  try {
    return work(key);
  } finally {
    key.fill(0);
  }
}
