import { randomBytes, scryptSync } from "node:crypto";
import { z } from "zod";
import { encryptedFields, type FieldProtection } from "./field-protection.ts";
import { passphraseCost } from "./passphrase-cost.ts";

export { passphraseBytes } from "./passphrase-bytes.ts";

const keyBytes = 32;

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

export type KeyDerivation = z.infer<typeof derivationSchema>;

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

export type WrappedKey = z.infer<typeof wrappedKeySchema>;

export function newDataKey(): Uint8Array {
  return randomBytes(keyBytes);
}

const place = (derivation: KeyDerivation) => JSON.stringify(["register data key", derivation]);

export function wrapKey(dataKey: Uint8Array, passphrase: Uint8Array): WrappedKey {
  const derivation = newDerivation();
  const wrapped = withKeyOf(passphrase, derivation, (key) => key.write(dataKey, place(derivation)));
  return { derivation, wrapped: Buffer.from(wrapped).toString("base64") };
}

/** @returns undefined when the passphrase is another one, or the wrapped key was altered */
export function unwrapKey({ derivation, wrapped }: WrappedKey, passphrase: Uint8Array): Uint8Array | undefined {
  return withKeyOf(passphrase, derivation, (key) => key.read(Buffer.from(wrapped, "base64"), place(derivation)));
}

function withKeyOf<Result>(
  passphrase: Uint8Array,
  derivation: KeyDerivation,
  work: (key: FieldProtection) => Result,
): Result {
  const key = deriveKey(passphrase, derivation);
  const protection = encryptedFields(key);
  key.fill(0);
  try {
    return work(protection);
  } finally {
    protection.forget();
  }
}
