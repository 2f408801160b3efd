import type { Settings } from "../settings.ts";
import { converterStep } from "./converter-step.ts";
import type { SampleSpan } from "./sample-span.ts";

/** A converter with coarser steps than this is none, newtons. */
const coarsestStepNewtons = 5;
/** A rounded top has fallen by no more steps than this, half its length beyond either end: four, and room for noise. */
const roundedTopSteps = 12;

/**
 * Flat tops of a plate's force: at least `clippedSamples` equal samples at its maximum (METHODS §7), the mark of an
 * exceeded measuring range. A plate that never carried more than the standing load has none. A top that is flat only
 * because the converter has coarse steps is none either: twice as far from its middle as its ends a parabola has fallen
 * by four steps at most, one whose top was cut off by three times what is missing (four steps, where it is taken for
 * rounded).
 */
export function clippedSpans(force: Float64Array, steadyLoad: number, settings: Settings): readonly SampleSpan[] {
  let largest = Number.NEGATIVE_INFINITY;
  for (let index = 0; index < force.length; index += 1) {
    const newtons = force[index]!;
    if (newtons > largest) largest = newtons;
  }
  if (largest <= steadyLoad) return [];
  const spans: SampleSpan[] = [];
  const step = converterStep(force) ?? 0;
  const isRounded = (span: SampleSpan): boolean => {
    const half = Math.ceil((span.end - span.start) / 2);
    const beyond = [force[span.start - half], force[span.end - 1 + half]];
    return (
      step <= coarsestStepNewtons &&
      beyond.every((newtons) => newtons !== undefined && largest - newtons <= roundedTopSteps * step)
    );
  };
  let start = -1;
  for (let index = 0; index <= force.length; index += 1) {
    const atTop = index < force.length && force[index] === largest;
    if (atTop && start < 0) start = index;
    if (atTop || start < 0) continue;
    const span = { start, end: index };
    if (index - start >= settings.clippedSamples && !isRounded(span)) spans.push(span);
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
