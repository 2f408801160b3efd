/** The bytes in memory that threads share: a recording is held once, and outlives the thread that works on it. */
export function sharedCopy(bytes: Uint8Array): Uint8Array<SharedArrayBuffer> {
  const shared = new Uint8Array(new SharedArrayBuffer(bytes.byteLength));
  shared.set(bytes);
  return shared;
}
