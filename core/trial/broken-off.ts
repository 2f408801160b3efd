import type { CutInput } from "./cut-input.ts";
import type { SampleSpan } from "./sample-span.ts";
import { runningMean } from "./segment-load.ts";

/**
 * Movements from standing that never leave the plate: force dips and rises between two stretches of quiet standing,
 * both by `brokenOffFraction` of the standing load. A weight shift stays below that.
 */
export function brokenOffMovements(input: CutInput): readonly SampleSpan[] {
  const { total, rateHz, segments, settings } = input;
  const { quiet, empty, steadyLoad, emptyLevel } = segments;
  const load = steadyLoad - emptyLevel;
  if (load <= 0) return [];
  const block = Math.max(2, Math.round(settings.quietBlockSeconds * rateHz));
  let smooth: Float64Array | undefined;
  const low = (1 - settings.brokenOffFraction) * load;
  const high = (1 + settings.brokenOffFraction) * load;
  return quiet.flatMap((before, position) => {
    const after = quiet[position + 1];
    if (after === undefined) return [];
    const gap = { start: before.end, end: after.start };
    if (empty.some((span) => span.start >= gap.start && span.end <= gap.end)) return [];
    // Most recordings have a flight between any two standings and never need the means.
    smooth ??= runningMean(total, block);
    let least = Number.POSITIVE_INFINITY;
    let most = Number.NEGATIVE_INFINITY;
    for (let index = gap.start; index < gap.end; index += 1) {
      least = Math.min(least, smooth[index]!);
      most = Math.max(most, smooth[index]!);
    }
    return least < low && most > high ? [gap] : [];
  });
}
