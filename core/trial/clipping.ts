import type { Settings } from "../settings/settings.ts";
import { converterStep } from "./converter-step.ts";
import { meanOf } from "./force-signal.ts";
import { limitedSpans } from "./limited-spans.ts";
import type { SampleSpan } from "./sample-span.ts";
import type { LoadSegments } from "./segment-load.ts";

/**
 * Flat tops of a plate's force: at least `clippedSamples` equal samples at its maximum (METHODS §7), the mark of an
 * exceeded measuring range. A plate that never carried more than its own part of the standing has none. A top that is flat only
 * because the converter has coarse steps is none either: twice as far from its middle as its ends a parabola has fallen
 * by four steps at most, one whose top was cut off by three times what is missing (four steps, where it is taken for
 * rounded).
 */
export function clippedSpans(force: Float64Array, standingNewtons: number, settings: Settings): readonly SampleSpan[] {
  const { largest, tops } = topsOf(force, settings.clippedSamples);
  if (largest <= standingNewtons) return [];
  let step: number | undefined;
  const isRounded = (span: SampleSpan): boolean => {
    step ??= converterStep(force) ?? 0;
    const half = Math.ceil((span.end - span.start) / 2);
    const [before, after] = [force[span.start - half], force[span.end - 1 + half]];
    if (step > settings.clippedCoarsestStepNewtons || before === undefined || after === undefined) return false;
    // On the average of both ends: a top that leans falls less on one side by what it falls more on the other.
    return largest - (before + after) / 2 <= settings.clippedRoundedTopSteps * step;
  };
  return tops.filter((span) => !isRounded(span));
}

/** The largest force, and every stretch of at least `least` samples at it. */
function topsOf(
  force: Float64Array,
  least: number,
): { readonly largest: number; readonly tops: readonly SampleSpan[] } {
  let largest = Number.NEGATIVE_INFINITY;
  let tops: SampleSpan[] = [];
  let start = -1;
  const count = force.length;
  for (let index = 0; index <= count; index += 1) {
    const newtons = index < count ? force[index]! : Number.NaN;
    if (newtons === largest && start >= 0) continue;
    if (start >= 0 && index - start >= least) tops.push({ start, end: index });
    start = -1;
    if (newtons < largest) continue;
    if (newtons > largest) {
      largest = newtons;
      tops = [];
    }
    if (newtons === largest) start = index;
  }
  return { largest, tops };
}

/** A flat top of one plate. */
export interface ClippedSpan {
  readonly plate: number;
  readonly span: SampleSpan;
}

/**
 * Flat tops of every plate, without those that two plates enter and leave in the same samples at different forces:
 * two ranges are never exceeded so exactly together, so that is the shape of the force itself. A range that an amplifier
 * ends before its noise is added has a top that is flat but for noise, between two corners.
 */
export function clippedPlates(
  forces: readonly Float64Array[],
  rateHz: number,
  { quiet, steadyLoad }: Pick<LoadSegments, "quiet" | "steadyLoad">,
  settings: Settings,
): readonly ClippedSpan[] {
  const all = forces.flatMap((force, plate) => {
    const standing = standingOn(force, quiet, steadyLoad, settings);
    const exact = clippedSpans(force, standing, settings);
    const found = exact.length > 0 ? exact : limitedSpans({ force, rateHz }, standing, quiet, settings);
    return found.map((span): ClippedSpan => ({ plate, span }));
  });
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

/** The largest mean force of one plate in quiet standing, and at least what a touching foot leaves on it. */
function standingOn(force: Float64Array, quiet: readonly SampleSpan[], steadyLoad: number, settings: Settings): number {
  const levels = quiet.map(({ start, end }) => meanOf(force, start, end));
  return Math.max(
    settings.clippedTouchingFraction * steadyLoad,
    ...levels.map((level) => settings.clippedAboveStandingRatio * level),
  );
}
