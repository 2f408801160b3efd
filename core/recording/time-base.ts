import { type Finding, finding, isRefused } from "../finding.ts";
import type { Settings } from "../settings.ts";
import { printedResolution, typicalStep } from "./stamps.ts";

/** A column of stamps and what is known about it. */
export interface StampColumn {
  readonly stamps: Float64Array;
  /** `unknown`: the file does not say; `index`: sample numbers. */
  readonly unit: "s" | "ms" | "index" | "unknown";
  /** True when its name says time: then it is not a sample number. */
  readonly saysTime: boolean;
  /** Line of the file of each stamp, from 1. */
  readonly lineOfRow: Uint32Array;
}

/** An even time base, or why there is none. */
export interface TimeBase {
  /** Absent when refused. */
  readonly rateHz?: number;
  readonly rateFrom: "time column" | "stated" | "unknown";
  readonly originSeconds: number;
  /** How the stamps were read: "" without a column. */
  readonly unit: "s" | "ms" | "";
  readonly findings: readonly Finding[];
}

/** The time base of a recording from its stamps, a stated rate, or both. */
export function findTimeBase(
  column: StampColumn | undefined,
  statedHz: number | undefined,
  settings: Settings,
): TimeBase {
  if (statedHz !== undefined && !isPlausible(statedHz, settings)) {
    return refused(implausible(`The stated rate of ${hertz(statedHz)}`, settings, "State the rate of the recording"));
  }
  if (column === undefined) {
    if (statedHz === undefined) return refused(rateMissing("The file has no time column."));
    return { rateHz: statedHz, rateFrom: "stated", originSeconds: 0, unit: "", findings: [] };
  }
  const step = typicalStep(column.stamps);
  if (!(step > 0)) return refused(unordered(column));
  const unit = column.unit === "unknown" ? guessUnit(step, column.saysTime, statedHz, settings) : column.unit;
  if (unit === "unknown") {
    if (statedHz !== undefined) return refused(contradiction(statedHz, 1 / step, "the time column"));
    return refused(rateMissing("The first column counts rows or milliseconds, and the file does not say which."));
  }
  const evenness = checkSteps(column, step, settings);
  if (unit === "index") {
    if (statedHz === undefined) return refused(rateMissing("The file counts samples but has no times."), ...evenness);
    return { rateHz: statedHz, rateFrom: "stated", originSeconds: 0, unit: "", findings: evenness };
  }
  const scale = unit === "ms" ? 1e-3 : 1;
  const { rateHz, tolerance } = rateOf(column.stamps, scale, step, isRefused(evenness));
  const findings = [...evenness];
  if (!isPlausible(rateHz, settings)) {
    findings.push(implausible(`A time column in ${unit} gives ${hertz(rateHz)}, which`, settings, "Check its unit"));
  }
  if (statedHz !== undefined) {
    const difference = Math.abs(statedHz - rateHz);
    if (difference > settings.timeUnevenFraction * rateHz)
      findings.push(contradiction(statedHz, rateHz, "the time column"));
    else if (difference > Math.max(tolerance, 1e-6 * rateHz)) findings.push(smallContradiction(statedHz, rateHz));
  }
  return { rateHz, rateFrom: "time column", originSeconds: column.stamps[0]! * scale, unit, findings };
}

/** Seconds or milliseconds, where only one of them gives a rate a force plate can have; a stated rate decides. */
function guessUnit(
  step: number,
  saysTime: boolean,
  statedHz: number | undefined,
  settings: Settings,
): "s" | "ms" | "index" | "unknown" {
  const agrees = (rateHz: number): boolean =>
    statedHz !== undefined && Math.abs(rateHz - statedHz) <= settings.timeUnevenFraction * statedHz;
  if (agrees(1 / step)) return "s";
  if (agrees(1000 / step)) return "ms";
  if (statedHz !== undefined) return step === 1 && !saysTime ? "index" : "unknown";
  const inSeconds = isPlausible(1 / step, settings);
  const inMilliseconds = isPlausible(1000 / step, settings);
  if (inSeconds) return inMilliseconds ? "unknown" : "s";
  return inMilliseconds && saysTime && step !== 1 ? "ms" : "unknown";
}

function isPlausible(rateHz: number, settings: Settings): boolean {
  return rateHz >= settings.rateLeastHz && rateHz <= settings.rateMostHz;
}

/**
 * Rate over all stamps. Printed stamps are rounded, so a whole number of hertz that they cannot tell apart from the
 * quotient is taken instead: 600 Hz printed to the millisecond over 2 s gives 599.85 to 600.15.
 * @param isUneven then gaps stretch the total, and the typical step is used.
 */
function rateOf(
  stamps: Float64Array,
  scale: number,
  step: number,
  isUneven: boolean,
): { readonly rateHz: number; readonly tolerance: number } {
  const steps = stamps.length - 1;
  const length = isUneven ? step * steps : stamps[steps]! - stamps[0]!;
  const rateHz = steps / (length * scale);
  const tolerance = rateHz * (printedResolution(stamps) / length + 1e-9);
  const whole = Math.round(rateHz);
  return { rateHz: Math.abs(rateHz - whole) <= tolerance ? whole : rateHz, tolerance };
}

/** Looks at every step: backwards or repeated, a gap, or uneven beyond what rounding of printed stamps explains. */
function checkSteps(column: StampColumn, step: number, settings: Settings): Finding[] {
  const { stamps, lineOfRow } = column;
  const resolution = printedResolution(stamps);
  const isExact = isMultiple(step, resolution);
  const rounding = isExact ? 1e-6 * step : resolution;
  if (resolution > step * (1 + 1e-6)) {
    return [
      uneven(
        "refusal",
        `The stamps are printed to ${resolution}, coarser than the time step, so that gaps cannot be seen.`,
        "",
        "Export the recording with more decimals, or without the time column and state the rate (--rate).",
      ),
    ];
  }
  const gaps: number[] = [];
  const backwards: number[] = [];
  const jitter: number[] = [];
  for (let row = 1; row < stamps.length; row++) {
    const difference = stamps[row]! - stamps[row - 1]!;
    if (difference <= 0) backwards.push(row);
    else if (difference > settings.gapSamples * step + rounding) gaps.push(row);
    else if (Math.abs(difference - step) > settings.timeUnevenFraction * step + rounding) jitter.push(row);
  }
  const place = (row: number): string => `line ${lineOfRow[row]}`;
  const more = (rows: readonly number[]): string => (rows.length > 1 ? ` (and at ${rows.length - 1} more places)` : "");
  const findings: Finding[] = [];
  if (backwards.length > 0) {
    const [row = 0] = backwards;
    findings.push(
      uneven(
        "refusal",
        `Time stands still or runs backwards in line ${lineOfRow[row]}: ${stamps[row - 1]} is followed by ${stamps[row]}${more(backwards)}.`,
        place(row),
        "Export the recording again; rows may be repeated or out of order.",
      ),
    );
  }
  if (gaps.length > 0) {
    const [row = 0] = gaps;
    findings.push(
      finding(
        "gap",
        "refusal",
        `Samples are missing before line ${lineOfRow[row]}: time goes from ${stamps[row - 1]} to ${stamps[row]}${more(gaps)}.`,
        "Export the recording again without missing samples.",
        { where: place(row) },
      ),
    );
  }
  if (findings.length > 0) return findings;
  const drift = largestDrift(stamps, step);
  if (drift.samples > 0.5 || (!isExact && !fitsRounding(stamps, step, resolution, settings))) {
    findings.push(
      uneven(
        "refusal",
        `The stamps fit no even time base: line ${lineOfRow[drift.row]} lies ${drift.samples.toFixed(1)} samples off; a sample may be missing.`,
        place(drift.row),
        "Export the recording again at one sampling rate.",
      ),
    );
  } else if (jitter.length > 0) {
    const [row = 0] = jitter;
    findings.push(
      uneven(
        "warning",
        `The time step before line ${lineOfRow[row]} differs from the others${more(jitter)}; an even time base was used.`,
        place(row),
        "Prefer times from the plate's own clock.",
      ),
    );
  }
  return findings;
}

/** True when rounding to the printed resolution cannot move a step: 1000 Hz printed to the millisecond. */
function isMultiple(step: number, resolution: number): boolean {
  if (resolution === 0) return false;
  const ratio = step / resolution;
  return Math.abs(ratio - Math.round(ratio)) <= 0.01;
}

/** Largest distance of a stamp from the straight line between the first and the last, in samples. */
function largestDrift(stamps: Float64Array, typical: number): { readonly samples: number; readonly row: number } {
  const last = stamps.length - 1;
  const step = (stamps[last]! - stamps[0]!) / last;
  let largest = { samples: 0, row: 0 };
  for (let row = 0; row <= last; row++) {
    const samples = Math.abs(stamps[row]! - stamps[0]! - row * step) / typical;
    if (samples > largest.samples) largest = { samples, row };
  }
  return largest;
}

/**
 * Where a step and the printed resolution are of one size (800 Hz printed to the millisecond), a missing sample hides
 * among rounded steps. Around the true line rounded stamps stay within one resolution (two, where the rate itself is
 * only known from the rounded ends); a missing sample moves all later ones by more.
 */
function fitsRounding(stamps: Float64Array, step: number, resolution: number, settings: Settings): boolean {
  if (resolution < step / 4) return true;
  const { rateHz } = rateOf(stamps, 1, step, false);
  const perMilli = rateOf(stamps, 1e-3, step, false).rateHz / 1000;
  const isWhole = Number.isInteger(rateHz) || Number.isInteger(perMilli * 1000);
  const evenStep = Number.isInteger(rateHz) ? 1 / rateHz : 1 / perMilli;
  let lowest = 0;
  let highest = 0;
  for (let row = 1; row < stamps.length; row++) {
    const distance = stamps[row]! - stamps[0]! - row * evenStep;
    lowest = Math.min(lowest, distance);
    highest = Math.max(highest, distance);
  }
  return highest - lowest <= resolution * (isWhole ? 1 : 2) * (1 + 1e-6) + settings.timeUnevenFraction * step;
}

function refused(first: Finding, ...others: readonly Finding[]): TimeBase {
  return { rateFrom: "unknown", originSeconds: 0, unit: "", findings: [first, ...others] };
}

function rateMissing(message: string): Finding {
  return finding("rate-missing", "refusal", message, "State the sampling rate (--rate 1000).");
}

function implausible(subject: string, settings: Settings, action: string): Finding {
  return finding(
    "rate-contradicts",
    "refusal",
    `${subject} is outside ${settings.rateLeastHz} to ${settings.rateMostHz} Hz.`,
    `${action} (--rate 1000).`,
  );
}

function contradiction(statedHz: number, rateHz: number, where: string): Finding {
  return finding(
    "rate-contradicts",
    "refusal",
    `${hertz(statedHz)} was stated, but the time column gives ${hertz(rateHz)}.`,
    "Correct the stated rate, or leave it out (--rate) to use the time column.",
    { where },
  );
}

function smallContradiction(statedHz: number, rateHz: number): Finding {
  return finding(
    "rate-contradicts",
    "warning",
    `${hertz(statedHz)} was stated, but the time column gives ${hertz(rateHz)}, which was used.`,
    "Leave the stated rate out (--rate) if the time column is right.",
    { where: "the time column" },
  );
}

function unordered(column: StampColumn): Finding {
  return uneven(
    "refusal",
    "The time column does not rise from row to row.",
    `line ${column.lineOfRow[0]}`,
    "State which column is time (--columns time=1,left=2,right=3), or export the recording again.",
  );
}

function uneven(severity: "warning" | "refusal", message: string, where: string, action: string): Finding {
  return finding("time-uneven", severity, message, action, { where });
}

function hertz(rateHz: number): string {
  return `${Number(rateHz.toPrecision(7))} Hz`;
}
