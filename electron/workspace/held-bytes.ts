/** Bytes of all samples that a value holds, and whatever it refers to; what is shared within it counts once. */
export function heldBytes(value: unknown): number {
  const seen = new Set<unknown>();
  const waiting: unknown[] = [value];
  let total = 0;
  for (let next = waiting.pop(); waiting.length > 0 || next !== undefined; next = waiting.pop()) {
    if (typeof next !== "object" || next === null || seen.has(next)) continue;
    seen.add(next);
    if (ArrayBuffer.isView(next)) waiting.push(next.buffer);
    else if (next instanceof ArrayBuffer || next instanceof SharedArrayBuffer) total += next.byteLength;
    else for (const each of Object.values(next)) if (typeof each === "object") waiting.push(each);
  }
  return total;
}
