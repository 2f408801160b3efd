/** Milliseconds between two looks at a watch while looking costs little. */
const lookMilliseconds = 400;

/** So much longer than a look took, the host has for what comes in: of a large session a look takes long. */
const rest = 4;

/** How long to wait before the next look, after one that took so long. */
export function nextLookMilliseconds(tookMilliseconds: number): number {
  return Math.max(lookMilliseconds, rest * tookMilliseconds);
}
