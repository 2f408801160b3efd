import { createCipheriv, createDecipheriv, randomBytes, randomFillSync } from "node:crypto";

const cipher = "aes-256-gcm";
const nonceBytes = 12;
const tagBytes = 16;

/** Bytes of every key: content keys, data keys and those that follow from a passphrase. */
export const keyBytes = 32;

export function newKey(): Uint8Array {
  return randomFillSync(new Uint8Array(new ArrayBuffer(keyBytes)));
}

/**
 * A copy that can be overwritten for good. A small array that is made without a buffer of its own lies among objects that
 * are moved about and leave copies behind.
 */
export function copyOfSecret(secret: Uint8Array): Uint8Array {
  const copy = new Uint8Array(new ArrayBuffer(secret.byteLength));
  copy.set(secret);
  return copy;
}

/** AES-256-GCM: a random nonce of 12 bytes, then the encrypted bytes, then the tag of 16; the place is authenticated too. */
export function encrypt(key: Uint8Array, plain: Uint8Array, place: string): Uint8Array {
  const nonce = randomBytes(nonceBytes);
  const encryption = createCipheriv(cipher, key, nonce).setAAD(Buffer.from(place));
  return Buffer.concat([nonce, encryption.update(plain), encryption.final(), encryption.getAuthTag()]);
}

/** @returns undefined when the bytes are not what was encrypted under this key at this place */
export function decrypt(key: Uint8Array, stored: Uint8Array, place: string): Uint8Array | undefined {
  if (stored.byteLength < nonceBytes + tagBytes) return undefined;
  const end = stored.byteLength - tagBytes;
  const decryption = createDecipheriv(cipher, key, stored.subarray(0, nonceBytes))
    .setAAD(Buffer.from(place))
    .setAuthTag(stored.subarray(end));
  const head = decryption.update(stored.subarray(nonceBytes, end));
  try {
    // GCM has given everything by now; this only checks the tag.
    decryption.final();
    return head;
  } catch {
    // The only failure of `final` is a tag that does not fit: other key, other place, or altered bytes.
    return undefined;
  }
}
