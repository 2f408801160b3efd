import type { ContentKeys } from "./content-keys.ts";
import { copyOfSecret, decrypt } from "./encryption.ts";
import { locked } from "./locked.ts";

/** How a field is written to the file and read from it. The place is bound to what is written there. */
export interface FieldProtection {
  /** Reading such a field proves that it is what was written; else the checksum beside it must be looked at. */
  proves(stored: Uint8Array): boolean;
  /** @param person whose content key it is written under; "" for what belongs to nobody */
  write(plain: Uint8Array, place: string, person: string): Uint8Array;
  /** @returns undefined when the bytes are not what was written at this place */
  read(stored: Uint8Array, place: string): Uint8Array | undefined;
  /** There is such a content key, and it can be unwrapped. */
  opens(keyId: string): boolean;
  /** Forgets its keys; whoever still holds this can neither read nor write with it. */
  forget(): void;
}

/** Fields as they are; their checksums stand beside them. */
export const plainFields: FieldProtection = {
  proves: () => false,
  write: (plain) => plain,
  read: (stored) => stored,
  opens: () => false,
  forget: () => undefined,
};

/** What a field written under a content key begins with: the number of this form, and which key it is. */
const form = 1;
const keyIdBytes = 16;
const headBytes = 1 + keyIdBytes;

/** The key that a field says it is under; undefined for one that is too short, or of another form. */
export function keyIdIn(stored: Uint8Array): string | undefined {
  if (stored.byteLength < headBytes || stored[0] !== form) return undefined;
  return Buffer.from(stored.subarray(1, headBytes)).toString("hex");
}

/** The first bytes of every field under a key. */
export function headOf(keyId: string): Uint8Array {
  return Buffer.concat([Buffer.of(form), Buffer.from(keyId, "hex")]);
}

/**
 * Each person's fields under a content key of its own.
 * @param earlier reads what a conversion has not come to yet; a field in the earlier form begins with a random nonce,
 *   with a random salt or as JSON, and never with the identifier of a key (16 random bytes)
 */
export function layeredFields(keys: ContentKeys, earlier: FieldProtection | undefined): FieldProtection {
  const isLayered = (stored: Uint8Array) => {
    const keyId = keyIdIn(stored);
    return keyId !== undefined && keys.key(keyId) !== undefined;
  };
  return {
    proves: (stored) => earlier === undefined || isLayered(stored) || earlier.proves(stored),
    write: (plain, place, person) => {
      const { keyId, key } = keys.keyOf(person);
      return Buffer.concat([headOf(keyId), key.encrypt(plain, layeredPlace(keyId, place))]);
    },
    read: (stored, place) => {
      const keyId = keyIdIn(stored);
      const key = keyId === undefined ? undefined : keys.key(keyId);
      if (keyId === undefined || key === undefined) return earlier?.read(stored, place);
      return key.decrypt(stored.subarray(headBytes), layeredPlace(keyId, place));
    },
    opens: (keyId) => keys.key(keyId) !== undefined,
    forget: () => {
      keys.forget();
      earlier?.forget();
    },
  };
}

function layeredPlace(keyId: string, place: string): string {
  return `${keyId} ${place}`;
}

/** Fields that are being taken out of their layers: written as they are, read in both forms. */
export function unlayeringFields(keys: ContentKeys): FieldProtection {
  return { ...layeredFields(keys, plainFields), write: (plain) => plain };
}

/** Written as they are, read as they were protected before; for a copy that is converted in one transaction. */
export function takingOut(before: FieldProtection): FieldProtection {
  return { ...before, write: (plain) => plain };
}

/** As registers up to schema 3 kept their fields: all of them under the data key itself. Only read. */
export function directFields(dataKey: Uint8Array): FieldProtection {
  let key: Uint8Array | undefined = copyOfSecret(dataKey);
  return {
    proves: () => true,
    write: () => {
      throw new Error("Nothing is written under the data key itself any more.");
    },
    read: (stored, place) => {
      if (key === undefined) throw locked();
      return decrypt(key, stored, place);
    },
    opens: () => false,
    forget: () => {
      key?.fill(0);
      key = undefined;
    },
  };
}
