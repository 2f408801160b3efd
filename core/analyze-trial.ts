import { type AnalyzedJump, trialKey } from "./analysis.ts";
import { chooseWeight, trialWeight, withSoundWeighing } from "./choose-weight.ts";
import type { TrialDraft } from "./draft-trials.ts";
import { anchorMotion } from "./events/anchor-motion.ts";
import { detectTrial } from "./events/detect-trial.ts";
import type { DetectionInput, LimbSignal } from "./events/detection.ts";
import { endMismatch } from "./events/end-mismatch.ts";
import type { TrialEvent } from "./events/event.ts";
import { hopLimbEvents } from "./events/hop-limb-events.ts";
import { inputUncertainties } from "./events/input-uncertainties.ts";
import type { JumpMotion } from "./events/jump-events.ts";
import { withWeight } from "./events/kinematics.ts";
import { publishEvents } from "./events/publish-events.ts";
import { plateNoise } from "./events/weigh.ts";
import { type Finding, isRefused } from "./finding.ts";
import { expectedMeasures } from "./measures/expected-measures.ts";
import { hopLimbTimes } from "./measures/hop-limb-times.ts";
import { bestHops, type Hop, hopsOf } from "./measures/hops.ts";
import { leadingLegFindings } from "./measures/leading-leg-findings.ts";
import type { Measure } from "./measures/measure.ts";
import { measureJump } from "./measures/measure-jump.ts";
import type { MeasureContext } from "./measures/raw-measure.ts";
import { platesUsed } from "./plates-used.ts";
import { implausibleWeight, movedFindings, undetectedFinding, weightUnknown } from "./refusal-findings.ts";
import type { HopResult, TrialResult, WeightUsed } from "./result.ts";
import type { Settings } from "./settings.ts";
import { trialFindings } from "./trial-findings.ts";
import { compareSaidMasses } from "./weight/compare-said-masses.ts";
import type { TrialWeightContext } from "./weight/session-weighing.ts";

/** A trial's result, with what a screen needs to draw it where it could be analysed. */
export interface AnalyzedTrial {
  readonly result: TrialResult;
  readonly key: string;
  readonly jump?: AnalyzedJump;
}

/** One trial from its draft to its measures: weight, events, measures, findings. */
export function analyzeTrial(
  asDrafted: TrialDraft,
  session: TrialWeightContext,
  enteredMassKg: number | undefined,
  settings: Settings,
): AnalyzedTrial {
  const draft = withSoundWeighing(asDrafted, session, enteredMassKg, settings);
  const { prepared, cut, test, limb } = draft;
  if (
    prepared === undefined ||
    cut === undefined ||
    test === undefined ||
    limb === undefined ||
    isRefused(draft.findings)
  ) {
    return refused(draft, draft.findings);
  }
  const { rateHz } = prepared.recording;

  // Weight, as its test and the session give it.
  const used = chooseWeight(draft, session, enteredMassKg, settings);
  if (used === undefined)
    return refused(draft, [
      ...draft.findings,
      weightUnknown(test, cut, draft.otherFootWeighed, rateHz, session.notPooled),
    ]);
  const implausible = implausibleWeight(used.newtons / settings.gravity, settings);
  if (implausible !== undefined) return refused(draft, [...draft.findings, implausible]);
  // A stated mass that a reading in body weights hangs on has been held against the header's already.
  const header = draft.findings.some((each) => each.code === "weight-differs") ? undefined : draft.headerMass;
  const weightFindings =
    asDrafted.weighing === undefined
      ? []
      : compareSaidMasses(
          trialWeight(asDrafted),
          { ...(enteredMassKg !== undefined && { enteredMassKg }), ...(header !== undefined && { header }) },
          settings,
        );
  if (rateHz < settings.rateRefuseHz) return weightOnly(draft, used, weightFindings, settings);

  // Events, with what a person has moved.
  const limbs = limbSignals(draft);
  const still = stillWindow(draft);
  const input: DetectionInput = {
    test,
    total: prepared.total,
    limbs,
    cut,
    weight: {
      newtons: used.newtons,
      deviation: draft.weighing?.deviation ?? 0,
      ...(still === undefined ? {} : { still: still.window }),
    },
    edits: draft.edits,
    settings,
  };
  const jump = detectTrial(input);
  if ("missing" in jump) return refused(draft, [...draft.findings, undetectedFinding(jump, test, rateHz)]);

  // Measures, each with its uncertainty.
  const quiet = (draft.still ?? draft.weighing)?.window;
  const noise = (force: Float64Array): number => (quiet === undefined ? 0 : plateNoise(force, quiet));
  const hops = hopsOf(jump, settings);
  const usedHops = bestHops(hops, limb, settings);
  const context: MeasureContext = {
    jump,
    limb,
    limbs: limbs.map((signal) => ({
      signal,
      noiseNewtons: noise(signal.force),
      zeroNewtons: prepared.zeroUncertainties[prepared.forces.indexOf(signal.force)] ?? 0,
    })),
    noiseNewtons: noise(prepared.total.force),
    zeroNewtons: Math.hypot(...prepared.zeroUncertainties),
    ...(jump.hops === undefined ? {} : { usedHops }),
  };
  const uncertainties = inputUncertainties(used, draft.balance, still, jump.anchor, draft.edits, rateHz, settings);
  const all = measureJump(context, uncertainties, settings);

  // What must be said about them.
  const said = trialFindings({ draft, prepared, cut, context, measures: all, otherFoot: otherFoot(draft) }, settings);
  const events = [
    ...publishEvents(jump, draft.edits, context.noiseNewtons, uncertainties),
    ...hopLimbEvents(jump, input, uncertainties),
  ];
  const findings = [
    ...draft.findings,
    ...weightFindings,
    ...said.findings,
    ...leadingLegFindings(draft.leadingLeg, events, test, settings),
    ...movedFindings(draft.edits, events),
  ];
  if (isRefused(findings)) return refused(draft, findings);
  const result: TrialResult = {
    ...identity(draft),
    status: missesMeasures(findings) ? "partial" : "analysed",
    weight: used,
    events,
    measures: said.measures,
    ...(jump.hops === undefined ? {} : { hops: hops.map((hop) => hopResult(hop, usedHops, events)) }),
    ...mismatch(draft, jump),
    findings,
  };
  return { result, key: trialKey(result.file, result.trial), jump: { prepared, cut, jump, ...loadedPlace(draft) } };
}

/** The place from 1 of the plate that alone carried the jump. */
function loadedPlace({ prepared, loadedPlate }: TrialDraft): { readonly loadedPlate?: number } {
  const at = prepared?.recording.plates.findIndex((plate) => plate.name === loadedPlate) ?? -1;
  return at < 0 ? {} : { loadedPlate: at + 1 };
}

/** A hop with what the bout and each limb on its own plate make of it. */
function hopResult(hop: Hop, used: readonly number[], events: readonly TrialEvent[]): HopResult {
  const limbs = hopLimbTimes(events, hop.contactIndex);
  return { ...hop, used: used.includes(hop.contactIndex), ...(limbs.length === 0 ? {} : { limbs }) };
}

/** Where the motion ends up by the weight of the standing before the jump alone: a balance of both ends at zero. */
function mismatch(
  { weighing, still, after }: TrialDraft,
  { motion, anchor, events }: JumpMotion,
): Pick<TrialResult, "endMismatch"> {
  if (weighing === undefined || still === undefined || after === undefined) return {};
  const oneEnded = anchorMotion(withWeight(motion, weighing.newtons), anchor, events);
  return { endMismatch: endMismatch(oneEnded, after.window) };
}

/**
 * Quiet standing that gives the velocity. None for a drop jump whose landing exceeded the plate's range: force is
 * missing between the flight and that standing.
 */
function stillWindow({ test, prepared, cut, still }: TrialDraft): TrialDraft["still"] {
  if (test !== "dropJump" || still === undefined || cut === undefined) return still;
  const clipped = prepared?.clipped.some(({ span }) => span.start >= cut.flight.end && span.end <= still.window.start);
  return clipped === true ? undefined : still;
}

/** What identifies a trial, whatever became of it. */
function identity(draft: TrialDraft): Omit<TrialResult, "status" | "events" | "measures" | "findings"> {
  const { file, trial, prepared, cut, test, limb, excluded, kept, practice, recognised, dropHeightMetres, leadingLeg } =
    draft;
  return {
    file: file.path,
    sha256: file.sha256,
    trial,
    plates: prepared === undefined ? [] : platesUsed(prepared, cut?.span.start ?? 0),
    seen: draft.seen,
    edits: draft.edits,
    ...(test === undefined ? {} : { test }),
    ...(limb === undefined ? {} : { limb }),
    ...(prepared === undefined
      ? {}
      : { rate: prepared.recording.rateHz, timeOrigin: prepared.recording.timeOriginSeconds }),
    ...(cut === undefined ? {} : { span: cut.span }),
    ...(excluded === undefined ? {} : { excluded }),
    ...(kept ? { kept } : {}),
    ...(practice === undefined ? {} : { practice }),
    ...(recognised === undefined ? {} : { recognised }),
    ...(dropHeightMetres === undefined ? {} : { dropHeightMetres }),
    ...(leadingLeg === undefined ? {} : { leadingLeg }),
  };
}

function refused(draft: TrialDraft, findings: readonly Finding[]): AnalyzedTrial {
  const result: TrialResult = { ...identity(draft), status: "refused", events: [], measures: [], findings };
  return { result, key: trialKey(result.file, result.trial) };
}

/** Left and right on their own plates, in two-leg trials only. */
function limbSignals(draft: TrialDraft): readonly LimbSignal[] {
  const { prepared, limb } = draft;
  if (prepared === undefined || limb !== "both") return [];
  const { plates, rateHz } = prepared.recording;
  const signals = plates.flatMap((plate, index) =>
    plate.limb === "both" ? [] : [{ side: plate.limb, rateHz, force: prepared.forces[index]! }],
  );
  return signals.length === 2 ? signals : [];
}

/** Force of the plate that does not carry a single-leg trial; undefined on one plate. */
function otherFoot(draft: TrialDraft): Float64Array | undefined {
  const { prepared, loadedPlate } = draft;
  if (prepared === undefined || loadedPlate === undefined) return undefined;
  const index = prepared.recording.plates.findIndex((plate) => plate.name !== loadedPlate);
  return prepared.forces[index];
}

/** Below the least rate only weight and mass remain; every other measure is named as removed (METHODS §7). */
function weightOnly(draft: TrialDraft, used: WeightUsed, more: readonly Finding[], settings: Settings): AnalyzedTrial {
  const onTwoPlates = limbSignals(draft).length === 2;
  const removes = expectedMeasures(draft.test ?? "countermovementJump", onTwoPlates).filter(
    (id) => id !== "bodyWeight" && id !== "bodyMass",
  );
  const side = draft.limb ?? "both";
  const uncertainty = Math.hypot(used.uncertainty, ...(draft.prepared?.zeroUncertainties ?? []));
  const measures: readonly Measure[] = [
    { id: "bodyWeight", side, value: used.newtons, unit: "N", uncertainty },
    {
      id: "bodyMass",
      side,
      value: used.newtons / settings.gravity,
      unit: "kg",
      uncertainty: uncertainty / settings.gravity,
    },
  ];
  const findings = [...draft.findings, ...more].map((each) => (each.code === "rate-low" ? { ...each, removes } : each));
  const result: TrialResult = { ...identity(draft), status: "partial", weight: used, events: [], measures, findings };
  return { result, key: trialKey(result.file, result.trial) };
}

/** A warning that cost measures makes a trial partial; a note about a measure that needs a longer recording does not. */
function missesMeasures(findings: readonly Finding[]): boolean {
  return findings.some((each) => each.severity === "warning" && each.removes.length > 0);
}
