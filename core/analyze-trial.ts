import { type AnalyzedJump, trialKey } from "./analysis.ts";
import { chooseWeight, trialWeight } from "./choose-weight.ts";
import type { TrialDraft } from "./draft-trials.ts";
import { type DetectionWeight, detectJump, type LimbSignal } from "./events/detect-jump.ts";
import { type EventEdit, eventLabel } from "./events/event.ts";
import { inputUncertainties } from "./events/input-uncertainties.ts";
import { publishEvents } from "./events/publish-events.ts";
import { compareWeights, type SessionWeight } from "./events/session-weight.ts";
import { plateNoise } from "./events/weigh.ts";
import { type Finding, finding, isRefused } from "./finding.ts";
import { measureCatalogue } from "./measures/catalogue.ts";
import { clippingFindings } from "./measures/clipping-findings.ts";
import {
  consistencyFindings,
  landingFindings,
  laterFlightFindings,
  singleLegFindings,
} from "./measures/jump-findings.ts";
import type { Measure } from "./measures/measure.ts";
import { measureJump } from "./measures/measure-jump.ts";
import type { MeasureContext } from "./measures/raw-measure.ts";
import type { TrialResult, WeightUsed } from "./result.ts";
import type { Settings } from "./settings.ts";

/** A trial's result, with what a screen needs to draw it where it could be analysed. */
export interface AnalyzedTrial {
  readonly result: TrialResult;
  readonly key: string;
  readonly jump?: AnalyzedJump;
}

/** One trial from its draft to its measures: weight, events, measures, findings. */
export function analyzeTrial(
  draft: TrialDraft,
  session: SessionWeight | undefined,
  enteredMassKg: number | undefined,
  settings: Settings,
): AnalyzedTrial {
  const { prepared, cut, limb } = draft;
  if (prepared === undefined || cut === undefined || limb === undefined || isRefused(draft.findings)) {
    return refused(draft, draft.findings);
  }
  const { rateHz } = prepared.recording;

  // Weight: the session's for single-leg trials, the trial's own otherwise, an entered mass where nobody stood still.
  const used = chooseWeight(draft, session, enteredMassKg, settings);
  if (used === undefined) return refused(draft, [...draft.findings, startsMoving(rateHz, cut.flight.start)]);
  const weightFindings =
    draft.weighing === undefined ? [] : compareWeights(trialWeight(draft), session, enteredMassKg, settings);
  if (rateHz < settings.rateRefuseHz) return weightOnly(draft, used, weightFindings, settings);

  // Events, with what a person has moved.
  const limbs = limbSignals(draft);
  const detection: DetectionWeight = {
    newtons: used.newtons,
    ...(draft.weighing === undefined ? {} : { weighing: draft.weighing }),
  };
  const jump = detectJump(prepared.total, limbs, cut, detection, draft.edits, settings);
  if ("missing" in jump) return refused(draft, [...draft.findings, undetected(jump.missing, jump.atSample, rateHz)]);

  // Measures, each with its uncertainty.
  const noise = (force: Float64Array): number =>
    draft.weighing === undefined ? 0 : plateNoise(force, draft.weighing.window);
  const context: MeasureContext = {
    jump,
    limb,
    limbs: limbs.map((signal) => ({ signal, noiseNewtons: noise(signal.force) })),
    noiseNewtons: noise(prepared.total.force),
  };
  const uncertainties = inputUncertainties(used.uncertainty, draft.weighing, draft.edits, rateHz, settings);
  const all = measureJump(context, uncertainties, settings);

  // What must be said about them.
  const clipping = clippingFindings(prepared, jump.events);
  const removed = new Set(clipping.flatMap((each) => each.removes));
  const measures = all.filter((measure) => !removed.has(measure.id));
  const findings = [
    ...draft.findings,
    ...weightFindings,
    ...clipping,
    ...landingFindings(context, cut, all, settings),
    ...laterFlightFindings(cut, rateHz),
    ...singleLegFindings(context, otherFoot(draft), settings),
    ...consistencyFindings(context, measures, settings),
    ...movedFindings(draft.edits),
  ];
  if (isRefused(findings)) return refused(draft, findings);
  const result: TrialResult = {
    ...identity(draft),
    status: clipping.length > 0 || missesMeasures(findings) ? "partial" : "analysed",
    weight: used,
    events: publishEvents(jump, draft.edits, context.noiseNewtons, uncertainties),
    measures,
    findings,
  };
  return { result, key: trialKey(result.file, result.trial), jump: { prepared, cut, jump } };
}

/** What identifies a trial, whatever became of it. */
function identity(draft: TrialDraft): Omit<TrialResult, "status" | "events" | "measures" | "findings"> {
  const { file, trial, prepared, cut, test, limb, excluded } = draft;
  return {
    file: file.path,
    sha256: file.sha256,
    trial,
    plates: (prepared?.recording.plates ?? []).map(({ name, limb: foot, proof }) => ({ name, limb: foot, proof })),
    seen: draft.seen,
    edits: draft.edits,
    ...(test === undefined ? {} : { test }),
    ...(limb === undefined ? {} : { limb }),
    ...(prepared === undefined
      ? {}
      : { rate: prepared.recording.rateHz, timeOrigin: prepared.recording.timeOriginSeconds }),
    ...(cut === undefined ? {} : { span: cut.span }),
    ...(excluded === undefined ? {} : { excluded }),
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

function startsMoving(rateHz: number, flightStart: number): Finding {
  return finding(
    "starts-moving",
    "refusal",
    `Nobody stands still before the jump at ${(flightStart / rateHz).toFixed(2)} s, so body weight is unknown.`,
    "Record two seconds of quiet standing before the jump, or give the body mass (--mass).",
    { where: `0.00 s to ${(flightStart / rateHz).toFixed(2)} s` },
  );
}

function undetected(missing: string, sample: number, rateHz: number): Finding {
  const startsInMovement = missing === "onset";
  return finding(
    startsInMovement ? "starts-moving" : "event-not-found",
    "refusal",
    startsInMovement
      ? "The recording starts in mid-movement: force never was at body weight before the dip."
      : `No ${missing} is found near ${(sample / rateHz).toFixed(2)} s.`,
    startsInMovement
      ? "Start the recording two seconds before the jump."
      : "Check that this is a countermovement jump from standing.",
    { where: `${(sample / rateHz).toFixed(2)} s` },
  );
}

function movedFindings(edits: readonly EventEdit[]): readonly Finding[] {
  return edits.map((edit) =>
    finding(
      "event-moved",
      "note",
      `The ${eventLabel(edit.name)} was moved by hand to ${edit.time.toFixed(4)} s.`,
      "Reset it to the detected place if this was not meant.",
      { where: `${edit.time.toFixed(4)} s` },
    ),
  );
}

/** Below the least rate only weight and mass remain; every other measure is named as removed (METHODS §7). */
function weightOnly(draft: TrialDraft, used: WeightUsed, more: readonly Finding[], settings: Settings): AnalyzedTrial {
  const removes = measureCatalogue.map((entry) => entry.id).filter((id) => id !== "bodyWeight" && id !== "bodyMass");
  const side = draft.limb ?? "both";
  const measures: readonly Measure[] = [
    { id: "bodyWeight", side, value: used.newtons, unit: "N", uncertainty: used.uncertainty },
    {
      id: "bodyMass",
      side,
      value: used.newtons / settings.gravity,
      unit: "kg",
      uncertainty: used.uncertainty / settings.gravity,
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
