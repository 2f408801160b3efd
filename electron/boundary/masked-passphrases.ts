/**
 * A passphrase on its way from the page is masked: each of its bytes is combined with one of a pad of random bytes that
 * the host made for this one request. What the machine's own buffers keep of the request then says nothing, because the
 * host overwrites the pad. Runs in Node and in browsers; imports nothing.
 */
export const padHeader = "x-counterpoise-pad";

/** Room for every passphrase that one request can carry. */
export const padBytes = 8192;

/** Passphrases of a request, by the names they have in all requests. */
export function passphrasesOf(request: unknown): readonly (readonly [name: string, passphrase: Uint8Array])[] {
  if (typeof request !== "object" || request === null) return [];
  return Object.entries(request).filter(
    (entry): entry is [string, Uint8Array] => /passphrase$/i.test(entry[0]) && entry[1] instanceof Uint8Array,
  );
}

/**
 * The request with its passphrases masked, or, with the same pad, unmasked again.
 * @throws RangeError where the pad is too short for them
 */
export function combinedWithPad(request: unknown, pad: Uint8Array): unknown {
  let at = 0;
  const combined = passphrasesOf(request).map(([name, passphrase]) => {
    const bytes = new Uint8Array(new ArrayBuffer(passphrase.byteLength));
    for (const [index, byte] of passphrase.entries()) {
      const mask = pad[at + index];
      if (mask === undefined) throw new RangeError("The passphrases are longer than the pad.");
      bytes[index] = byte ^ mask;
    }
    at += passphrase.byteLength;
    return [name, bytes] as const;
  });
  return { ...(request as object), ...Object.fromEntries(combined) };
}
