import { type Finding, finding, isRefused } from "../finding.ts";
import type { Settings } from "../settings.ts";
import { findEvenRate } from "./even-rate.ts";
import { printedResolution, typicalStep } from "./stamps.ts";
import { checkSteps, type StampColumn } from "./step-checks.ts";

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
  const unit = column.unit === "unknown" ? guessUnit(column, step, statedHz, settings) : column.unit;
  if (unit === "unknown") {
    if (statedHz !== undefined) return refused(contradiction(statedHz, 1 / step, "the time column"));
    const { writtenUnit } = column;
    const why =
      writtenUnit === ""
        ? "Its time column may count rows, milliseconds or seconds, and the file does not say which."
        : `The unit of its time column (${writtenUnit}) is not one of s and ms.`;
    return refused(rateMissing(why));
  }
  const resolution = printedResolution(column.stamps);
  const evenness = checkSteps(column, step, resolution, settings);
  if (unit === "index") {
    if (statedHz === undefined)
      return refused(rateMissing("The file counts its samples but has no times."), ...evenness);
    return { rateHz: statedHz, rateFrom: "stated", originSeconds: 0, unit: "", findings: evenness };
  }
  const scale = unit === "ms" ? 1e-3 : 1;
  if (isRefused(evenness)) return { rateFrom: "unknown", originSeconds: 0, unit, findings: evenness };
  const { rateHz, toleranceHz, explainsAll } = findEvenRate(column.stamps, scale, step, resolution, settings);
  const findings = [...evenness];
  if (!explainsAll) findings.push(sampleMayBeMissing(resolution, unit));
  if (!isPlausible(rateHz, settings)) {
    findings.push(implausible(`A time column in ${unit} gives ${hertz(rateHz)}, which`, settings, "Check its unit"));
  }
  if (statedHz !== undefined) {
    const difference = Math.abs(statedHz - rateHz);
    if (difference > settings.timeUnevenFraction * rateHz)
      findings.push(contradiction(statedHz, rateHz, "the time column"));
    else if (difference > Math.max(toleranceHz, 1e-6 * rateHz)) findings.push(smallContradiction(statedHz, rateHz));
  }
  return { rateHz, rateFrom: "time column", originSeconds: column.stamps[0]! * scale, unit, findings };
}

/** Seconds or milliseconds, where only one of them gives a rate a force plate can have; a stated rate decides. */
function guessUnit(
  { saysTime, writtenUnit }: StampColumn,
  step: number,
  statedHz: number | undefined,
  settings: Settings,
): "s" | "ms" | "index" | "unknown" {
  const agrees = (rateHz: number): boolean =>
    statedHz !== undefined && Math.abs(rateHz - statedHz) <= settings.timeUnevenFraction * statedHz;
  if (agrees(1 / step)) return "s";
  if (agrees(1000 / step)) return "ms";
  if (statedHz !== undefined) return step === 1 && !saysTime ? "index" : "unknown";
  if (writtenUnit !== "") return "unknown";
  const inSeconds = isPlausible(1 / step, settings);
  const inMilliseconds = isPlausible(1000 / step, settings);
  if (inSeconds) return inMilliseconds ? "unknown" : "s";
  return inMilliseconds && saysTime && step !== 1 ? "ms" : "unknown";
}

function isPlausible(rateHz: number, settings: Settings): boolean {
  return rateHz >= settings.rateLeastHz && rateHz <= settings.rateMostHz;
}

function refused(first: Finding, ...others: readonly Finding[]): TimeBase {
  return { rateFrom: "unknown", originSeconds: 0, unit: "", findings: [first, ...others] };
}

function rateMissing(message: string): Finding {
  return finding(
    "rate-missing",
    "refusal",
    `The sampling rate is not known. ${message}`,
    "State the sampling rate (--rate 1000).",
  );
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

function sampleMayBeMissing(resolution: number, unit: string): Finding {
  return finding(
    "time-uneven",
    "refusal",
    `No sampling rate explains all stamps, which are printed to ${resolution} ${unit}: a sample may be missing.`,
    "Export the recording with more decimals in the time column.",
    { where: "the time column" },
  );
}

function unordered(column: StampColumn): Finding {
  return finding(
    "time-uneven",
    "refusal",
    "The time column does not rise from row to row.",
    "State which column is time (--columns time=1,left=2,right=3), or export the recording again.",
    { where: `line ${column.lineOfRow[0]}` },
  );
}

function hertz(rateHz: number): string {
  return `${Number(rateHz.toPrecision(7))} Hz`;
}
