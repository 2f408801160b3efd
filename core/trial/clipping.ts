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

/** A flat top of one plate. */
export interface ClippedSpan {
  readonly plate: number;
  readonly span: SampleSpan;
}

/**
 * Flat tops of every plate, without those that two plates enter and leave in the same samples at different forces:
 * two ranges are never exceeded so exactly together, so that is the shape of the force itself.
 */
export function clippedPlates(
  forces: readonly Float64Array[],
  steadyLoad: number,
  settings: Settings,
): readonly ClippedSpan[] {
  const all = forces.flatMap((force, plate) =>
    clippedSpans(force, steadyLoad, settings).map((span): ClippedSpan => ({ plate, span })),
  );
  const level = ({ plate, span }: ClippedSpan): number => forces[plate]![span.start]!;
  return all.filter(
    (own) =>
      !all.some(
        (other) =>
          other.plate !== own.plate &&
          other.span.start === own.span.start &&
          other.span.end === own.span.end &&
          level(other) !== level(own),
      ),
  );
}
