import type { JumpCut } from "../trial/cut-trials.ts";

/** Velocity is drawn and looked for from this long before the first contact on. */
const beforeContactSeconds = 0.1;

/** First sample of the motion of a trial that starts on an empty plate. */
export function fallStart(cut: JumpCut, rateHz: number): number {
  const first = cut.fall?.start ?? cut.contact.start;
  return Math.max(first, cut.contact.start - Math.round(beforeContactSeconds * rateHz));
}
