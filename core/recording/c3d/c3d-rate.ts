import type { C3dFile } from "../../bytes/c3d/c3d-file.ts";
import { type Finding, finding } from "../../ground/finding.ts";
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
    return unknown(finding("rate-missing/no-frame-rate", "refusal", {}, { answers: [{ asks: "rateHz" }] }));
  }
  const rateFrom = ownHz === undefined ? "stated" : "frame rate";
  if (!(rateHz >= settings.rateLeastHz && rateHz <= settings.rateMostHz)) {
    return unknown(
      rateFrom === "stated"
        ? finding("rate-missing/stated-of-no-plate", "refusal", { rateHz }, { answers: [{ asks: "rateHz" }] })
        : finding("rate-contradicts/of-no-plate", "refusal", { rateHz }),
    );
  }
  if (ownHz !== undefined && statedHz !== undefined) {
    const difference = Math.abs(statedHz - ownHz) / ownHz;
    const figures = { statedHz, ownHz };
    const parts = { answers: [{ rateHz: ownHz }] };
    if (difference > settings.timeUnevenFraction) {
      return unknown(finding("rate-contradicts/frame-rate", "refusal", figures, parts));
    }
    if (difference > 1e-6) {
      const note = finding("rate-contradicts/frame-rate-used", "warning", figures, parts);
      return { rateHz, rateFrom, findings: [note, ...rateFindings(rateHz, settings)] };
    }
  }
  return { rateHz, rateFrom, findings: rateFindings(rateHz, settings) };
}

function unknown(refusal: Finding): C3dRate {
  return { rateFrom: "unknown", findings: [refusal] };
}
