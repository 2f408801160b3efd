import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { type Finding, proseFinding } from "../../ground/finding.ts";
import type { Settings } from "../../settings/settings.ts";
import { rateFindings } from "../rate-findings.ts";

export interface C3dRate {
  readonly rateHz?: number;
  readonly rateFrom: "frame rate" | "stated" | "unknown";
  readonly findings: readonly Finding[];
}

/** The analog rate of the file; a stated one only where the file is silent, else it has to agree. */
export function decideRate(file: C3dFile, statedHz: number | undefined, settings: Settings): C3dRate {
  const ownHz = file.analogRateHz;
  const rateHz = ownHz ?? statedHz;
  if (rateHz === undefined) {
    return unknown("rate-missing", "The file states no frame rate.", "State the sampling rate (--rate 1000).");
  }
  const rateFrom = ownHz === undefined ? "stated" : "frame rate";
  if (!(rateHz >= settings.rateLeastHz && rateHz <= settings.rateMostHz)) {
    const message = `A rate of ${hertz(rateHz)} is none that a force plate has.`;
    return unknown(
      rateFrom === "stated" ? "rate-missing" : "rate-contradicts",
      message,
      "Check the rate of the recording.",
    );
  }
  if (ownHz !== undefined && statedHz !== undefined) {
    const difference = Math.abs(statedHz - ownHz) / ownHz;
    const message = `${hertz(statedHz)} was stated, but the file gives ${hertz(ownHz)}`;
    const action = "Leave the stated rate out (--rate) to use the file's own.";
    if (difference > settings.timeUnevenFraction) return unknown("rate-contradicts", `${message}.`, action);
    if (difference > 1e-6) {
      const note = proseFinding("rate-contradicts", "warning", `${message}, which was used.`, action);
      return { rateHz, rateFrom, findings: [note, ...rateFindings(rateHz, settings)] };
    }
  }
  return { rateHz, rateFrom, findings: rateFindings(rateHz, settings) };
}

function unknown(code: "rate-missing" | "rate-contradicts", message: string, action: string): C3dRate {
  return { rateFrom: "unknown", findings: [proseFinding(code, "refusal", message, action)] };
}

function hertz(rateHz: number): string {
  return `${Number(rateHz.toPrecision(7))} Hz`;
}
