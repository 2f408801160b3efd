import { type AnalyzedJump, type SessionAnalysis, trialKey } from "./analysis.ts";
import type { Side } from "./limb.ts";
import type { TrialResult } from "./result.ts";
import type { CurveOverlay } from "./sides/curves.ts";
import { type AlignableCurve, overlayCurves } from "./sides/overlay-curves.ts";
import type { TestKind } from "./test-kind.ts";

/** What to lay over each other. */
export interface OverlayRequest {
  readonly test: TestKind;
  /** `both`: the two limbs within two-leg trials; `single`: single-leg trials of the two sides. */
  readonly legs: "both" | "single";
  readonly alignedAt: "takeoff" | "onset";
}

/** Curves run from this long before the onset … */
const beforeOnsetSeconds = 0.1;
/** … to this long after take-off. */
const afterTakeoffSeconds = 0.05;

/**
 * Involved and uninvolved curves of one test in body weights, excluded trials left out; left and right where nobody or
 * both are injured.
 * @returns undefined when a side has no trial to draw.
 */
export function overlaySession(analysis: SessionAnalysis, request: OverlayRequest): CurveOverlay | undefined {
  const { trials, description } = analysis.result;
  const firstSide: Side = description.involved === "right" ? "right" : "left";
  const curves = trials
    .filter((trial) => trial.test === request.test && trial.excluded === undefined)
    .filter((trial) => (trial.limb === "both") === (request.legs === "both"))
    .flatMap((trial) => {
      const analyzed = analysis.jumps.get(trialKey(trial.file, trial.trial));
      return analyzed === undefined ? [] : curvesOf(trial, analyzed, request);
    });
  return overlayCurves(curves, firstSide, request.alignedAt);
}

function curvesOf(trial: TrialResult, analyzed: AnalyzedJump, request: OverlayRequest): readonly AlignableCurve[] {
  const { motion, events } = analyzed.jump;
  const { rateHz } = motion.signal;
  const began = events.onset ?? events.contactTouchdown;
  const alignSample = events[request.alignedAt];
  if (began === undefined || alignSample === undefined || events.takeoff === undefined) return [];
  const common = {
    file: trial.file,
    trial: trial.trial,
    rateHz,
    weightNewtons: motion.weightNewtons,
    alignSample,
    startSample: began - beforeOnsetSeconds * rateHz,
    endSample: events.takeoff + afterTakeoffSeconds * rateHz,
  };
  if (trial.limb === "left" || trial.limb === "right") {
    return [{ ...common, side: trial.limb, force: motion.signal.force }];
  }
  const { plates } = analyzed.prepared.recording;
  return plates.flatMap((plate, index) =>
    plate.limb === "both" ? [] : [{ ...common, side: plate.limb, force: analyzed.prepared.forces[index]! }],
  );
}
