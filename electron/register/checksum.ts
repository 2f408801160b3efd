import { createHash } from "node:crypto";

/** SHA-256 over parts, each with its length, so that no two lists of parts give the same text. */
export function sha256Of(...parts: readonly (string | Uint8Array)[]): Uint8Array {
  const sum = createHash("sha256");
  for (const part of parts) {
    const bytes = typeof part === "string" ? Buffer.from(part) : part;
    sum.update(`${bytes.byteLength}:`).update(bytes);
  }
  return sum.digest();
}

export function sameBytes(first: Uint8Array, second: Uint8Array): boolean {
  return Buffer.compare(first, second) === 0;
}
