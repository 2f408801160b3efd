import { createCipheriv, createDecipheriv, randomBytes } from "node:crypto";
import { RequestRefused } from "../request-refused.ts";

/** How a field is written to the file and read from it. The place is bound to what is written there. */
export interface FieldProtection {
  readonly encrypted: boolean;
  write(plain: Uint8Array, place: string): Uint8Array;
  /** @returns undefined when the bytes are not what was written at this place */
  read(stored: Uint8Array, place: string): Uint8Array | undefined;
  /** Forgets the key; whoever still holds this can neither read nor write with it. */
  forget(): void;
}

/** Fields as they are; their checksums stand beside them. */
export const plainFields: FieldProtection = {
  encrypted: false,
  write: (plain) => plain,
  read: (stored) => stored,
  forget: () => undefined,
};

const cipher = "aes-256-gcm";
const nonceBytes = 12;
const tagBytes = 16;

/** Fields under AES-256-GCM: a random nonce, then the encrypted bytes, then the tag; the place is authenticated too. */
export function encryptedFields(dataKey: Uint8Array): FieldProtection {
  let key: Uint8Array | undefined = Uint8Array.from(dataKey);
  const knownKey = () => {
    if (key === undefined) throw new RequestRefused("The register is locked: give its passphrase to read it.");
    return key;
  };
  return {
    encrypted: true,
    write: (plain, place) => {
      const nonce = randomBytes(nonceBytes);
      const encryption = createCipheriv(cipher, knownKey(), nonce).setAAD(Buffer.from(place));
      return Buffer.concat([nonce, encryption.update(plain), encryption.final(), encryption.getAuthTag()]);
    },
    read: (stored, place) => {
      if (stored.byteLength < nonceBytes + tagBytes) return undefined;
      const end = stored.byteLength - tagBytes;
      const decryption = createDecipheriv(cipher, knownKey(), stored.subarray(0, nonceBytes))
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
    },
    forget: () => {
      key?.fill(0);
      key = undefined;
    },
  };
}
