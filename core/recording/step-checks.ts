import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import { isMultiple, isRoundingCoarse } from "./even-rate.ts";
import type { TimeUnit } from "./time-units.ts";

/** A column of stamps and what is known about it. */
export interface StampColumn {
  readonly stamps: Float64Array;
  /** `unknown`: the file does not say, or says something else; `index`: sample numbers. */
  readonly unit: TimeUnit | "index" | "unknown";
  /** The unit as written; "" where the file is silent. */
  readonly writtenUnit: string;
  /** True when its name says time: then it is not a sample number. */
  readonly saysTime: boolean;
  /** Line of the file of each stamp, from 1. */
  readonly lineOfRow: Uint32Array;
}

/**
 * Seconds since 1970 leave a step uncertain by some millionths, because doubles hold few of their decimals. No
 * setting: rounding of doubles.
 */
const stepRounding = 1e-4;

/** True for stamps printed more coarsely than the samples follow each other, so that neighbours share one. */
export function isCoarserThanStep(step: number, resolution: number): boolean {
  return resolution > step * (1 + stepRounding);
}

/**
 * Looks at every step: backwards or repeated, a gap, or uneven beyond what rounding of printed stamps explains.
 * @param isResampled true where the samples will be put on an even time base: unevenness is then no refusal.
 */
export function checkSteps(
  column: StampColumn,
  step: number,
  resolution: number,
  isResampled: boolean,
  settings: Settings,
): Finding[] {
  const { stamps } = column;
  const mayRepeat = isCoarserThanStep(step, resolution);
  const rounding = isMultiple(step, resolution) ? 1e-6 * step : resolution;
  const gaps: number[] = [];
  const backwards: number[] = [];
  const jitter: number[] = [];
  const mostStep = settings.gapSamples * step + rounding;
  const mostUneven = settings.timeUnevenFraction * step + rounding;
  const rows = stamps.length;
  for (let row = 1; row < rows; row++) {
    const difference = stamps[row]! - stamps[row - 1]!;
    if (difference < 0 || (difference === 0 && !mayRepeat)) backwards.push(row);
    else if (difference > mostStep) gaps.push(row);
    else if (Math.abs(difference - step) > mostUneven) jitter.push(row);
  }
  const findings: Finding[] = [];
  if (backwards.length > 0) findings.push(backwardTime(column, backwards));
  if (gaps.length > 0) findings.push(gap(column, gaps));
  if (findings.length > 0 || isRoundingCoarse(step, resolution)) return findings;
  const drift = largestDrift(stamps, step);
  if (drift.samples > settings.timeDriftSamples) return [noEvenBase(column, drift.row, drift.samples, isResampled)];
  return jitter.length > 0 ? [unevenSteps(column, jitter, isResampled)] : [];
}

/** Largest distance of a stamp from the straight line between the first and the last, in samples. */
function largestDrift(stamps: Float64Array, typical: number): { readonly samples: number; readonly row: number } {
  const last = stamps.length - 1;
  const step = (stamps[last]! - stamps[0]!) / last;
  const first = stamps[0]!;
  let largest = 0;
  let at = 0;
  for (let row = 0; row <= last; row++) {
    const samples = Math.abs(stamps[row]! - first - row * step) / typical;
    if (samples > largest) {
      largest = samples;
      at = row;
    }
  }
  return { samples: largest, row: at };
}

function stepAt(column: StampColumn, rows: readonly number[]) {
  const row = rows[0] ?? 0;
  return {
    line: column.lineOfRow[row]!,
    from: column.stamps[row - 1]!,
    to: column.stamps[row]!,
    others: rows.length - 1,
  };
}

function backwardTime(column: StampColumn, rows: readonly number[]): Finding {
  const step = stepAt(column, rows);
  return finding("time-uneven/backwards", "refusal", step, { place: { at: "line", line: step.line } });
}

function gap(column: StampColumn, rows: readonly number[]): Finding {
  const step = stepAt(column, rows);
  return finding("gap/stamps", "refusal", step, { place: { at: "line", line: step.line } });
}

function unevenSteps(column: StampColumn, rows: readonly number[], isResampled: boolean): Finding {
  const { line, others } = stepAt(column, rows);
  return finding("time-uneven/steps", "warning", { line, others, isResampled }, { place: { at: "line", line } });
}

function noEvenBase(column: StampColumn, row: number, samples: number, isResampled: boolean): Finding {
  const line = column.lineOfRow[row]!;
  return finding(
    "time-uneven/no-even-base",
    isResampled ? "warning" : "refusal",
    { line, samples, isResampled },
    { place: { at: "line", line }, answers: isResampled ? [] : [{ resample: true }] },
  );
}

/** Refuses stamps among which a missing sample could not be seen. */
export function tooCoarse(resolution: number): Finding {
  return finding("time-uneven/too-coarse", "refusal", { resolution }, { answers: [{ asks: "rateHz" }] });
}
