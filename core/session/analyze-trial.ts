import { anchorMotion } from "../events/anchor-motion.ts";
import { endMismatch } from "../events/end-mismatch.ts";
import type { JumpMotion } from "../events/jump-events.ts";
import { withWeight } from "../events/kinematics.ts";
import { type Finding, isRefused } from "../ground/finding.ts";
import { trialKey } from "../ground/trial-key.ts";
import { expectedMeasures } from "../measures/expected-measures.ts";
import { leadingLegFindings } from "../measures/leading-leg-findings.ts";
import type { Measure } from "../measures/measure.ts";
import type { TrialResult, WeightUsed } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import { compareSaidMasses } from "../weight/compare-said-masses.ts";
import type { TrialWeightContext } from "../weight/session-weighing.ts";
import { chooseWeight, trialWeight, withSoundWeighing } from "./choose-weight.ts";
import { heightContradiction } from "./height-contradiction.ts";
import { limbSignals, measureTrial } from "./measure-trial.ts";
import { platesUsed } from "./plates-used.ts";
import { implausibleWeight, movedFindings, undetectedFinding } from "./refusal-findings.ts";
import type { AnalyzedJump } from "./session-analysis.ts";
import type { TrialDraft } from "./trial-draft.ts";
import { type UnknownMotion, weightUnknown } from "./unknown-motion.ts";

/** A trial's result, with what a screen needs to draw it where it could be analysed. */
export interface AnalyzedTrial {
  readonly result: TrialResult;
  readonly key: string;
  readonly jump?: AnalyzedJump | undefined;
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
  const trial: UnknownMotion = {
    test,
    cut,
    otherFootWeighed: draft.otherFootWeighed,
    rateHz,
    ...(session.notPooled === undefined ? {} : { notPooled: session.notPooled }),
  };
  const withoutWeight = (): AnalyzedTrial => refused(draft, [...draft.findings, weightUnknown(trial, "refusal")]);
  const implausible = used && implausibleWeight(used.newtons / settings.gravity, settings);
  if (implausible !== undefined) return refused(draft, [...draft.findings, implausible]);
  // A stated mass that a reading in body weights hangs on has been held against the header's already.
  const header = draft.findings.some((each) => each.code === "weight-differs") ? undefined : draft.headerMass;
  const weightFindings =
    asDrafted.weighing === undefined
      ? []
      : compareSaidMasses(
          trialWeight(asDrafted),
          { ...(enteredMassKg === undefined ? {} : { enteredMassKg }), ...(header === undefined ? {} : { header }) },
          settings,
        );
  if (rateHz < settings.rateRefuseHz) {
    return used === undefined ? withoutWeight() : weightOnly({ ...draft, test }, used, weightFindings, settings);
  }

  const measured = measureTrial({ draft, prepared, cut, test, limb, trial }, used, undefined, settings);
  if ("missing" in measured) return refused(draft, [...draft.findings, undetectedFinding(measured, test, rateHz)]);
  // Where the flight says that weight or velocity are wrong, only what needs neither is left.
  const contradiction =
    used === undefined ? undefined : heightContradiction(measured.said.measures, cut, rateHz, settings);
  const left =
    contradiction === undefined
      ? measured
      : measureTrial(
          { draft: withoutWeighing(draft), prepared, cut, test, limb, trial },
          undefined,
          contradiction,
          settings,
        );
  if ("missing" in left || left.said.measures.length === 0) return withoutWeight();

  const { jump, said, events, hops } = left;
  const findings = [
    ...draft.findings,
    ...weightFindings,
    ...said.findings,
    ...leadingLegFindings(draft.leadingLeg, events, test, settings),
    ...movedFindings(draft.edits, events),
  ];
  if (isRefused(findings)) return refused(draft, findings);
  const weight = contradiction === undefined ? used : undefined;
  const result: TrialResult = {
    ...identity(draft),
    ...(draft.heldBefore === undefined || draft.kept || draft.excluded !== undefined
      ? {}
      : { held: { reason: heldUp } }),
    status: missesMeasures(findings) ? "partial" : "analysed",
    ...(weight === undefined ? {} : { weight }),
    events,
    measures: said.measures,
    ...(jump.hops === undefined ? {} : { hops }),
    ...(weight === undefined ? {} : mismatch(draft, jump)),
    findings,
  };
  return { result, key: trialKey(result.file, result.trial), jump: { prepared, cut, jump, ...loadedPlace(draft) } };
}

/** The place from 1 of the plate that alone carried the jump. */
function loadedPlace({ prepared, loadedPlate }: TrialDraft): { readonly loadedPlate?: number } {
  const at = prepared?.recording.plates.findIndex((plate) => plate.name === loadedPlate) ?? -1;
  return at < 0 ? {} : { loadedPlate: at + 1 };
}

/** Why such a trial stays out of means until a person keeps it. */
const heldUp = "the athlete was held up while standing before the jump";

/** The draft as if nobody had stood still. */
function withoutWeighing(draft: TrialDraft): TrialDraft {
  const { weighing: _weighing, still: _still, place: _place, balance: _balance, after: _after, ...rest } = draft;
  return rest;
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

/** Below the least rate only weight and mass remain; every other measure is named as removed (METHODS §7). */
function weightOnly(
  draft: TrialDraft & Required<Pick<TrialDraft, "test">>,
  used: WeightUsed,
  more: readonly Finding[],
  settings: Settings,
): AnalyzedTrial {
  const onTwoPlates = limbSignals(draft).length === 2;
  const removes = expectedMeasures(draft.test, onTwoPlates).filter((id) => id !== "bodyWeight" && id !== "bodyMass");
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
