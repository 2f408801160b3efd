import type { JumpMotion } from "../events/jump-events.ts";
import { oppositeSide, type Side } from "../ground/limb.ts";
import { type TestKind, testFacts } from "../ground/test-kind.ts";
import { trialKey } from "../ground/trial-key.ts";
import { countsInMeans } from "../result/held-trial.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { sameBoxHeight } from "../sides/box-height.ts";
import type { Alignment, CurveOverlay } from "../sides/curves.ts";
import { type AlignableCurve, overlayCurves } from "../sides/overlay-curves.ts";
import type { AnalyzedJump, SessionAnalysis } from "./session-analysis.ts";

/** What to lay over each other. */
export interface OverlayRequest {
  readonly test: TestKind;
  /** `both`: the two limbs within two-leg trials; `single`: single-leg trials of the two sides. */
  readonly legs: "both" | "single";
  readonly alignedAt: Alignment;
  /** Only trials from this box, metres; every trial where absent. */
  readonly dropHeightMetres?: number;
  /** Only trials in which this leg stepped off the box first; every trial where absent. */
  readonly leadingLeg?: Side;
}

/** Curves run from this long before the movement begins …. No setting: it is about drawing. */
const beforeSeconds = 0.1;
/** … to this long after take-off, …. No setting: it is about drawing. */
const afterTakeoffSeconds = 0.05;
/** … and of a landing to this long after the velocity has returned to zero. No setting: it is about drawing. */
const afterLandingSeconds = 0.3;

/**
 * Involved and uninvolved curves of one test in body weights, only trials that count in means; left and right where nobody
 * or both are injured; plate 1 and plate 2 where feet are in doubt in all of them.
 * @returns undefined when a side has no trial to draw.
 */
export function overlaySession(analysis: SessionAnalysis, request: OverlayRequest): CurveOverlay | undefined {
  const { trials, description } = analysis.result;
  const firstSide: Side = description.involved === "right" ? "right" : "left";
  const drawn = trials
    .filter((trial) => trial.test === request.test && countsInMeans(trial))
    .filter((trial) => (trial.limb === "both") === (request.legs === "both"))
    .filter(
      (trial) =>
        request.dropHeightMetres === undefined || sameBoxHeight(trial.dropHeightMetres, request.dropHeightMetres),
    )
    .filter((trial) => request.leadingLeg === undefined || trial.leadingLeg === request.leadingLeg);
  const known = drawn.filter((trial) => trial.feet === undefined);
  const inDoubt = known.length === 0;
  const curves = (inDoubt ? drawn : known).flatMap((trial) => {
    const analyzed = analysis.trials.get(trialKey(trial.file, trial.trial))?.jump;
    return analyzed === undefined ? [] : curvesOf(trial, analyzed, request, inDoubt);
  });
  const sides = [{ side: firstSide }, { side: oppositeSide(firstSide) }] as const;
  const plates = [{ plate: 1 }, { plate: 2 }] as const;
  return overlayCurves(curves, inDoubt ? plates : sides, request.alignedAt);
}

function curvesOf(
  trial: TrialResult,
  analyzed: AnalyzedJump,
  request: OverlayRequest,
  byPlate: boolean,
): readonly AlignableCurve[] {
  return stretchesOf(trial, analyzed.jump, request.alignedAt).flatMap((stretch) =>
    limbCurves(trial, analyzed, stretch, byPlate),
  );
}

/** What is drawn of a trial, in fractional samples. */
type Stretch = Pick<AlignableCurve, "alignSample" | "startSample" | "endSample">;

/** One stretch of a trial; of repeated hops one for every contact that the means of the bout are made from. */
function stretchesOf(trial: TrialResult, jump: JumpMotion, alignedAt: Alignment): readonly Stretch[] {
  const { events, hops, test } = jump;
  const { rateHz } = jump.motion.signal;
  const between = (began?: number, ended?: number, alignSample?: number): readonly Stretch[] =>
    began === undefined || ended === undefined || alignSample === undefined
      ? []
      : [{ alignSample, startSample: began - beforeSeconds * rateHz, endSample: ended }];
  if (hops !== undefined) {
    return (trial.hops ?? []).flatMap(({ contactIndex, used }) => {
      const { touchdown, takeoff } = hops.contacts[contactIndex - 1] ?? {};
      const ended = takeoff === undefined ? undefined : takeoff + afterTakeoffSeconds * rateHz;
      return used ? between(touchdown, ended, alignedAt === "takeoff" ? takeoff : touchdown) : [];
    });
  }
  if (testFacts(test).flights === "none") {
    const ended = events.landingEnd === undefined ? undefined : events.landingEnd + afterLandingSeconds * rateHz;
    return between(events.touchdown, ended, events.touchdown);
  }
  const { onset, contactTouchdown, takeoff } = events;
  const ended = takeoff === undefined ? undefined : takeoff + afterTakeoffSeconds * rateHz;
  const alignSample = { onset, takeoff, touchdown: contactTouchdown }[alignedAt];
  return between(onset ?? contactTouchdown, ended, alignSample);
}

function limbCurves(
  trial: TrialResult,
  analyzed: AnalyzedJump,
  stretch: Stretch,
  byPlate: boolean,
): readonly AlignableCurve[] {
  const { motion } = analyzed.jump;
  // Curves are drawn in body weights.
  if (Number.isNaN(motion.weightNewtons)) return [];
  const common = {
    file: trial.file,
    trial: trial.trial,
    rateHz: motion.signal.rateHz,
    weightNewtons: motion.weightNewtons,
    ...stretch,
  };
  if (trial.limb === "left" || trial.limb === "right") {
    if (!byPlate) return [{ ...common, side: trial.limb, force: motion.signal.force }];
    const plate = analyzed.loadedPlate;
    return plate === undefined ? [] : [{ ...common, plate, force: motion.signal.force }];
  }
  const { plates } = analyzed.prepared.recording;
  return plates.flatMap((plate, index) => {
    if (plate.limb === "both") return [];
    const force = analyzed.prepared.forces[index]!;
    return [byPlate ? { ...common, plate: index + 1, force } : { ...common, side: plate.limb, force }];
  });
}
