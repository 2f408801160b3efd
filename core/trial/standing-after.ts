import type { Settings } from "../settings/settings.ts";
import { longestOf, type SampleSpan } from "./sample-span.ts";

/**
 * Of the quiet stretches after a landing the one the athlete stands in: the first of `quietSecondsAfter`, else the
 * longest. A short crossing of the standing load while the landing settles is none.
 * @returns undefined when there is no quiet stretch.
 */
export function standingAfter(
  quiet: readonly SampleSpan[],
  rateHz: number,
  settings: Settings,
): SampleSpan | undefined {
  const wanted = settings.quietSecondsAfter * rateHz;
  return quiet.find((span) => span.end - span.start >= wanted) ?? longestOf(quiet);
}
