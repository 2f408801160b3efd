import type { Finding } from "../ground/finding.ts";
import { testFacts } from "../ground/test-kind.ts";
import { unnamedAbsences, unnamedMeasures } from "../measures/absent-measures.ts";
import { clippingFindings } from "../measures/clipping-findings.ts";
import { consistencyFindings } from "../measures/consistency-findings.ts";
import { dropFindings } from "../measures/drop-findings.ts";
import { expectedMeasures } from "../measures/expected-measures.ts";
import { firstPeakFindings, isLimbLoadingRate } from "../measures/first-peak-findings.ts";
import { hopFindings } from "../measures/hop-findings.ts";
import { landingFindings } from "../measures/landing-findings.ts";
import { landingPlateFindings } from "../measures/landing-plate-findings.ts";
import { laterFlightFindings } from "../measures/later-flight-findings.ts";
import type { Measure } from "../measures/measure.ts";
import { noiseFindings } from "../measures/noise-findings.ts";
import type { MeasureContext } from "../measures/raw-measure.ts";
import { singleLegFindings } from "../measures/single-leg-findings.ts";
import { spikeFindings } from "../measures/spike-findings.ts";
import { squatFindings } from "../measures/squat-findings.ts";
import { velocityFindings } from "../measures/velocity-findings.ts";
import type { Settings } from "../settings/settings.ts";
import type { JumpCut } from "../trial/cut-trials.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import { leastLoadFraction } from "../trial/recognise-test.ts";
import type { TrialDraft } from "./trial-draft.ts";

/** One measured trial. */
export interface MeasuredTrial {
  readonly draft: TrialDraft;
  readonly prepared: PreparedRecording;
  readonly cut: JumpCut;
  readonly context: MeasureContext;
  readonly measures: readonly Measure[];
  /** Force of the plate that does not carry a single-leg trial; undefined on one plate. */
  readonly otherFoot: Float64Array | undefined;
  /** Why weight, velocity or the beginning of the movement is unknown; it names what is missing for that reason. */
  readonly unknown: Finding | undefined;
}

/** The measures that stand, with everything that must be said about a measured trial. */
export interface SaidOfTrial {
  readonly measures: readonly Measure[];
  readonly findings: readonly Finding[];
}

/** Findings about a measured trial; measures that one of them removes are left out, and none is missing unnamed. */
export function trialFindings(trial: MeasuredTrial, settings: Settings): SaidOfTrial {
  const { draft, prepared, cut, context, measures: all, otherFoot, unknown } = trial;
  const { jump, limbs } = context;
  const { rateHz } = prepared.recording;
  const expected = expectedMeasures(jump.test, limbs.length === 2);
  const clipping = clippingFindings(prepared, jump);
  const otherLeg = landingPlateFindings(prepared, cut, context.limb, draft.loadedPlate, expected, settings);
  const removed = new Set([...clipping, ...otherLeg].flatMap((each) => each.removes));
  const firstPeaks = removed.has("loadingRate") ? [] : firstPeakFindings(context, settings);
  const measures = all.filter(
    (measure) => !removed.has(measure.id) && !(firstPeaks.length > 0 && isLimbLoadingRate(measure)),
  );
  const findings = [
    ...clipping,
    ...otherLeg,
    ...noiseFindings(prepared, cut, settings),
    ...spikeFindings(prepared, cut.span),
    ...landingFindings(context, cut, prepared.clipped, expected, all, settings),
    ...firstPeaks,
    ...(jump.hops === undefined ? laterFlightFindings(cut, rateHz, settings) : []),
    ...singleLegFindings(context, otherFoot, settings),
    ...(testFacts(jump.test).start === "hold"
      ? squatFindings(context, leastLoadFraction(prepared, cut, settings), settings)
      : []),
    ...dropFindings(context, draft, all, settings),
    ...velocityFindings(context, expected, all),
    ...hopFindings(context, expected, all, settings),
    ...consistencyFindings(context, measures, settings),
  ];
  return {
    measures,
    findings:
      unknown === undefined
        ? [...findings, ...unnamedAbsences(expected, measures, findings)]
        : [{ ...unknown, removes: unnamedMeasures(expected, measures, findings) }, ...findings],
  };
}
