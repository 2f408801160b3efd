import type { Settings } from "../settings.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * The steadiest `weighingSeconds` of quiet standing (METHODS §2); where every stretch is shorter, the longest stretch.
 * Of windows that are steady alike the one next to the movement is taken: the latest before it, the earliest after it;
 * the shorter the integration, the smaller its drift.
 * @returns undefined when there is no quiet standing.
 */
export function weighingWindow(
  total: Float64Array,
  rateHz: number,
  quiet: readonly SampleSpan[],
  settings: Settings,
  prefer: "latest" | "earliest" = "latest",
): SampleSpan | undefined {
  const width = Math.round(settings.weighingSeconds * rateHz);
  const long = quiet.filter((span) => span.end - span.start >= width);
  if (long.length === 0) {
    return quiet.reduce<SampleSpan | undefined>(
      (best, span) => (best === undefined || span.end - span.start >= best.end - best.start ? span : best),
      undefined,
    );
  }
  let bestStart = long[0]!.start;
  let bestVariance = Number.POSITIVE_INFINITY;
  for (const span of long) {
    // Taken from the stretch's own level, so that the running sums keep their digits.
    const level = total[span.start]!;
    let sum = 0;
    let squares = 0;
    for (let index = span.start; index < span.end; index += 1) {
      const value = total[index]! - level;
      sum += value;
      squares += value * value;
      const start = index - width + 1;
      if (start < span.start) continue;
      const variance = squares / width - (sum / width) ** 2;
      if (variance < bestVariance || (prefer === "latest" && variance === bestVariance)) {
        bestVariance = variance;
        bestStart = start;
      }
      const gone = total[start]! - level;
      sum -= gone;
      squares -= gone * gone;
    }
  }
  return { start: bestStart, end: bestStart + width };
}
