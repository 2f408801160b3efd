import type { Bearer, Side } from "../ground/limb.ts";
import type { CurveOverlay, SideCurves } from "./curves.ts";

/**
 * One trial's force of one limb, or of one plate while feet are in doubt, to be laid over the others; a two-leg trial on
 * two plates gives one curve for each.
 */
export type AlignableCurve = Bearer<Side> & ForceCurve;

interface ForceCurve {
  readonly file: string;
  readonly trial: number;
  readonly rateHz: number;
  /** Newtons; index 0 is sample 0 of the three positions below. */
  readonly force: Float64Array;
  /** Body weight of the athlete, also for the force of one limb. */
  readonly weightNewtons: number;
  /** Fractional sample of the event all trials are aligned at. */
  readonly alignSample: number;
  /** First and last sample to draw, fractions allowed; cut to the force given. */
  readonly startSample: number;
  readonly endSample: number;
}

/** More points than a screen has columns help nobody. No setting: it is about drawing. */
const mostPoints = 2000;

/** Rounding must not cost a curve its first or last sample. No setting: rounding of doubles. */
const sampleTolerance = 1e-6;

/** Force on the straight line between samples; NaN outside the stretch to draw. */
function forceAt(curve: AlignableCurve, sample: number): number {
  const last = Math.min(curve.endSample, curve.force.length - 1);
  const first = Math.max(curve.startSample, 0);
  if (sample < first - sampleTolerance || sample > last + sampleTolerance) return Number.NaN;
  const within = Math.min(Math.max(sample, 0), curve.force.length - 1);
  const before = Math.floor(within);
  const left = curve.force[before] ?? Number.NaN;
  const part = within - before;
  return part === 0 ? left : left + part * ((curve.force[before + 1] ?? Number.NaN) - left);
}

function sideCurves(of: Bearer<Side>, curves: readonly AlignableCurve[], timeSeconds: Float64Array): SideCurves {
  const drawn = curves.map((curve) => ({
    file: curve.file,
    trial: curve.trial,
    values: timeSeconds.map((time) => forceAt(curve, curve.alignSample + time * curve.rateHz) / curve.weightNewtons),
  }));
  // A NaN in any curve makes the mean NaN: mean and band stand only where every trial has data.
  const mean = timeSeconds.map(
    (_, at) => drawn.reduce((sum, curve) => sum + (curve.values[at] ?? Number.NaN), 0) / drawn.length,
  );
  const spread = (at: number) =>
    drawn.reduce((sum, curve) => sum + ((curve.values[at] ?? Number.NaN) - (mean[at] ?? Number.NaN)) ** 2, 0);
  return {
    ...of,
    curves: drawn,
    mean,
    standardDeviation:
      drawn.length < 2 ? new Float64Array(0) : timeSeconds.map((_, at) => Math.sqrt(spread(at) / (drawn.length - 1))),
  };
}

/**
 * Trials of both sides in body weights on one time axis with the event at zero, by straight lines between samples.
 * The axis runs from the earliest start to the latest end, at the highest rate or `mostPoints` points; curves are NaN
 * where their trial has no data.
 *
 * @returns undefined when a side has no trial
 */
export function overlayCurves(
  trials: readonly AlignableCurve[],
  bearers: readonly [first: Bearer<Side>, second: Bearer<Side>],
  alignedAt: CurveOverlay["alignedAt"],
): CurveOverlay | undefined {
  const [first, second] = bearers.map((of) =>
    trials.filter(({ side, plate }) => side === of.side && plate === of.plate),
  );
  if (first === undefined || second === undefined) return undefined;
  if (first.length === 0 || second.length === 0) return undefined;
  const from = Math.min(...trials.map((trial) => (Math.max(trial.startSample, 0) - trial.alignSample) / trial.rateHz));
  const to = Math.max(
    ...trials.map((trial) => (Math.min(trial.endSample, trial.force.length - 1) - trial.alignSample) / trial.rateHz),
  );
  const finest = 1 / Math.max(...trials.map((trial) => trial.rateHz));
  const step = Math.max(finest, (to - from) / (mostPoints - 1));
  // Whole steps from zero, so that the event itself is a point of the axis.
  const firstStep = Math.ceil(from / step - sampleTolerance);
  const lastStep = Math.floor(to / step + sampleTolerance);
  const timeSeconds = Float64Array.from(
    { length: Math.max(0, lastStep - firstStep + 1) },
    (_, at) => (firstStep + at) * step,
  );
  return {
    alignedAt,
    timeSeconds,
    first: sideCurves(bearers[0], first, timeSeconds),
    second: sideCurves(bearers[1], second, timeSeconds),
  };
}
