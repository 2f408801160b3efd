import type { Settings } from "../settings.ts";
import type { SampleSpan } from "./sample-span.ts";

/**
 * Flat tops of a plate's force: at least `clippedSamples` equal samples at its maximum (METHODS §7), the mark of an
 * exceeded measuring range. A plate that never carried more than the standing load has none.
 */
export function clippedSpans(force: Float64Array, steadyLoad: number, settings: Settings): readonly SampleSpan[] {
  let largest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < force.length; index += 1) {
    const newtons = force[index]!;
    if (newtons > largest) largest = newtons;
  }
  if (largest <= steadyLoad) return [];
  const spans: SampleSpan[] = [];
  let start = -1;
  for (let index = 0; index <= force.length; index += 1) {
    const atTop = index < force.length && force[index] === largest;
    if (atTop && start < 0) start = index;
    if (atTop || start < 0) continue;
    if (index - start >= settings.clippedSamples) spans.push({ start, end: index });
    start = -1;
  }
  return spans;
}
