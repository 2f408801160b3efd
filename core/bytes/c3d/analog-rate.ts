import { type Finding, finding } from "../../ground/finding.ts";
import type { FrameLayout } from "./c3d-file.ts";
import type { C3dHeader } from "./header.ts";
import { numberOf } from "./parameter-values.ts";
import type { Parameters } from "./parameters.ts";

/** Rates written as 32-bit numbers that differ by less are the same. No setting: rounding of 32-bit numbers. */
const rateTolerance = 1e-4;

/** Frame rate and analog rate. */
export interface C3dRates {
  readonly frameRateHz: number | undefined;
  readonly analogRateHz: number | undefined;
  readonly findings: readonly Finding[];
}

/**
 * The analog rate is the frame rate times the analog samples of one frame. ANALOG:RATE only bears it out, and decides
 * where parameter section and header state different frame rates.
 */
export function readRates(
  header: C3dHeader,
  parameters: Parameters,
  { channelCount, samplesPerFrame }: FrameLayout,
): C3dRates {
  const ofParameter = possibleRate(numberOf(parameters, "POINT:RATE", "signed"));
  const ofHeader = possibleRate(header.frameRateHz);
  const analog = possibleRate(numberOf(parameters, "ANALOG:RATE", "signed"));
  const first = ofParameter ?? ofHeader;
  if (first === undefined) return { frameRateHz: undefined, analogRateHz: undefined, findings: [] };
  const bearsOut = (rateHz: number): boolean => analog !== undefined && isSame(analog, rateHz * samplesPerFrame);
  const frameRateHz = ofHeader !== undefined && bearsOut(ofHeader) && !bearsOut(first) ? ofHeader : first;
  const analogRateHz = frameRateHz * samplesPerFrame;
  const findings: Finding[] = [];
  if (ofHeader !== undefined && !isSame(first, ofHeader)) {
    findings.push(
      finding(
        "rate-contradicts/frame-rates",
        "warning",
        { parameterHz: first, headerHz: ofHeader, usedHz: frameRateHz },
        { place: { at: "name", name: "POINT:RATE" } },
      ),
    );
  }
  if (channelCount > 0 && analog !== undefined && !bearsOut(frameRateHz)) {
    findings.push(
      finding(
        "rate-contradicts/analog-rate",
        "warning",
        { analogHz: analog, samplesPerFrame, frameRateHz, usedHz: analogRateHz },
        { place: { at: "name", name: "ANALOG:RATE" } },
      ),
    );
  }
  return { frameRateHz, analogRateHz, findings };
}

function possibleRate(rateHz: number | undefined): number | undefined {
  return rateHz !== undefined && Number.isFinite(rateHz) && rateHz > 0 ? rateHz : undefined;
}

function isSame(one: number, other: number): boolean {
  return Math.abs(one - other) <= rateTolerance * Math.max(one, other);
}
