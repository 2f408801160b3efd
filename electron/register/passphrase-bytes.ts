const encoder = new TextEncoder();

/**
 * A passphrase as it crosses the boundary and is used: the UTF-8 bytes of its NFKC form, so that letters that look the
 * same count as the same, however they were typed. Bytes can be overwritten after use; a text stays in memory until it
 * happens to be thrown away. Runs in Node and in browsers.
 */
export function passphraseBytes(text: string): Uint8Array<ArrayBuffer> {
  return encoder.encode(text.normalize("NFKC"));
}
