import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";

/** First sample of the motion of a trial that starts on an empty plate. */
export function fallStart(cut: JumpCut, rateHz: number, settings: Settings): number {
  const first = cut.fall?.start ?? cut.contact.start;
  return Math.max(first, cut.contact.start - Math.round(settings.fallVelocitySeconds * rateHz));
}
