import type { TrialEvent } from "../events/event.ts";
import type { Bearer, MeasureSide } from "../ground/limb.ts";
import { publishedUnit } from "../ground/units.ts";
import type { Measure } from "../measures/measure.ts";
import type { SessionResult } from "../result/session-result.ts";
import type { HopResult, TrialResult } from "../result/trial-result.ts";
import { english } from "../words/english.ts";
import { documentFinding } from "./document-finding.ts";
import type { DocumentMeasure, DocumentTrial } from "./document-shapes.ts";

/** One trial as the result document shows it. */
export function documentTrial(session: SessionResult, trial: TrialResult): DocumentTrial {
  return {
    file: session.folder === "" ? trial.file : `${session.folder}/${trial.file}`,
    ...(trial.sha256 !== "" && { sha256: trial.sha256 }),
    trial: trial.trial,
    status: trial.status,
    ...(trial.test === undefined ? {} : { test: trial.test }),
    ...(trial.limb === undefined ? {} : { legs: trial.limb === "both" ? "both" : "single" }),
    ...publishedLimb(trial),
    ...(trial.feet === undefined ? {} : { feet: trial.feet }),
    ...(trial.dropHeightMetres === undefined ? {} : { dropHeightMetres: trial.dropHeightMetres }),
    ...(trial.leadingLeg === undefined ? {} : { leadingLeg: trial.leadingLeg }),
    ...(trial.recognised && {
      recognised: { test: trial.recognised.test, reason: english.recognition(trial.recognised) },
    }),
    ...(trial.rate === undefined ? {} : { rate: trial.rate }),
    ...(trial.timeOrigin === undefined ? {} : { timeOrigin: trial.timeOrigin }),
    ...(trial.span && { span: { start: trial.span.start, end: trial.span.end } }),
    plates: trial.plates.map(({ name, limb, proof, zeroNewtons }) => ({
      name,
      limb,
      proof,
      ...(zeroNewtons === undefined ? {} : { zeroNewtons }),
    })),
    ...(trial.weight && {
      weight: {
        newtons: trial.weight.newtons,
        uncertainty: trial.weight.uncertainty,
        from: trial.weight.from,
        ...(trial.weight.trials === undefined ? {} : { trials: trial.weight.trials }),
        ...(trial.weight.window && { window: { start: trial.weight.window.start, end: trial.weight.window.end } }),
        ...(trial.weight.other && {
          other: {
            newtons: trial.weight.other.newtons,
            uncertainty: trial.weight.other.uncertainty,
            from: trial.weight.other.from,
          },
        }),
      },
    }),
    events: trial.events.map(documentEvent),
    measures: trial.measures.map(documentMeasure),
    ...(trial.hops && { hops: trial.hops.map(documentHop) }),
    ...(trial.endMismatch && {
      endMismatch: { velocity: trial.endMismatch.velocity, position: trial.endMismatch.position },
    }),
    findings: trial.findings.map(documentFinding),
    ...(trial.excluded && { excluded: { reason: trial.excluded.reason } }),
    ...(trial.held && { held: { reason: trial.held.reason } }),
    ...(trial.kept && { kept: true }),
    ...(trial.practice && { practice: true }),
    edits: trial.edits.map(({ name, contactIndex, time }) => ({
      name,
      ...(contactIndex === undefined ? {} : { contactIndex }),
      time,
    })),
  };
}

function documentEvent(event: TrialEvent): TrialEvent {
  const { name, sample, time, from, uncertainty, contactIndex, side, plate } = event;
  return {
    name,
    sample,
    time,
    from,
    ...(uncertainty === undefined ? {} : { uncertainty }),
    ...(contactIndex === undefined ? {} : { contactIndex }),
    ...(side === undefined ? {} : { side }),
    ...(plate === undefined ? {} : { plate }),
  };
}

/** The limb as stated; none where only the name of the loaded plate told it and nothing proves that name. */
function publishedLimb({ limb, feet }: TrialResult): Pick<DocumentTrial, "limb"> {
  return limb === undefined || (limb !== "both" && feet === "unproved") ? {} : { limb };
}

function documentMeasure(measure: Measure): DocumentMeasure {
  const { id, value, unit, uncertainty } = measure;
  return {
    id,
    ...bearerOf(measure),
    value,
    unit: publishedUnit(unit),
    ...(uncertainty === undefined ? {} : { uncertainty }),
  };
}

function bearerOf<Sides extends MeasureSide>({ side, plate }: Bearer<Sides>): Bearer<Sides> {
  return plate === undefined ? { side } : { plate };
}

function documentHop(hop: HopResult): HopResult {
  const { contactIndex, contactTime, flightTime, jumpHeightFlightTime, reactiveStrengthIndex, hopStiffness } = hop;
  return {
    contactIndex,
    contactTime,
    flightTime,
    jumpHeightFlightTime,
    reactiveStrengthIndex,
    ...(hopStiffness === undefined ? {} : { hopStiffness }),
    used: hop.used,
    ...(hop.limbs && { limbs: hop.limbs.map((each) => ({ ...bearerOf(each), contactTime: each.contactTime })) }),
  };
}
