import { type Finding, proseFinding } from "../ground/finding.ts";
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

function lineWhere(column: StampColumn, row: number): string {
  return `line ${column.lineOfRow[row]}`;
}

function andMore(rows: readonly number[]): string {
  if (rows.length === 1) return "";
  return rows.length === 2 ? " (and at 1 more place)" : ` (and at ${rows.length - 1} more places)`;
}

function backwardTime(column: StampColumn, rows: readonly number[]): Finding {
  const row = rows[0] ?? 0;
  const where = lineWhere(column, row);
  return proseFinding(
    "time-uneven",
    "refusal",
    `Time stands still or runs backwards in ${where}: ${column.stamps[row - 1]} is followed by ${column.stamps[row]}${andMore(rows)}.`,
    "Export the recording again; rows may be repeated or out of order.",
    { where },
  );
}

function gap(column: StampColumn, rows: readonly number[]): Finding {
  const row = rows[0] ?? 0;
  const where = lineWhere(column, row);
  return proseFinding(
    "gap",
    "refusal",
    `Samples are missing before ${where}: time goes from ${column.stamps[row - 1]} to ${column.stamps[row]}${andMore(rows)}.`,
    "Export the recording again without missing samples.",
    { where },
  );
}

function unevenSteps(column: StampColumn, rows: readonly number[], isResampled: boolean): Finding {
  const where = lineWhere(column, rows[0] ?? 0);
  return proseFinding(
    "time-uneven",
    "warning",
    `The time step before ${where} differs from the others${andMore(rows)}${isResampled ? "" : "; an even time base was used"}.`,
    "Prefer times from the plate's own clock.",
    { where },
  );
}

function noEvenBase(column: StampColumn, row: number, samples: number, isResampled: boolean): Finding {
  const where = lineWhere(column, row);
  return proseFinding(
    "time-uneven",
    isResampled ? "warning" : "refusal",
    `The stamps fit no even time base: ${where} lies ${samples.toFixed(1)} samples off.`,
    isResampled
      ? "Prefer times from the plate's own clock."
      : "Export the recording again at one sampling rate, or ask for an even time base (--resample).",
    { where },
  );
}

/** Refuses stamps among which a missing sample could not be seen. */
export function tooCoarse(resolution: number): Finding {
  return proseFinding(
    "time-uneven",
    "refusal",
    `The stamps are printed to ${resolution}, coarser than the time step, so that missing samples cannot be seen.`,
    "Export the recording with more decimals, or without the time column and state the rate (--rate 1000).",
  );
}
