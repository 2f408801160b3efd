import type { HopBout, JumpMotion } from "../events/jump-events.ts";
import { knowsVelocity, lastSample, positionAt, velocityAt } from "../events/kinematics.ts";
import { phasesOf } from "../events/phases.ts";
import type { Limb } from "../ground/limb.ts";
import { trialKey } from "../ground/trial-key.ts";
import { zeroLagFilter } from "../recording/zero-lag-filter.ts";
import type { TrialResult } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import { prepareRecording } from "../trial/prepare-recording.ts";
import type { SessionAnalysis } from "./session-analysis.ts";

/**
 * Curves of one trial for drawing, made from what its numbers were made from. A refused trial shows its force alone.
 * @throws RangeError for a trial the session does not have, or one whose file could not be read as force.
 */
export function traceTrial(analysis: SessionAnalysis, file: string, trial: number, settings: Settings): TrialTrace {
  const result = analysis.result.trials.find((each) => each.file === file && each.trial === trial);
  const recording = analysis.recordings.get(file)?.recording;
  if (result === undefined || recording === undefined) throw new RangeError(`There is nothing to draw for ${file}.`);
  const analyzed = analysis.trials.get(trialKey(file, trial))?.jump;
  const prepared = analyzed?.prepared ?? prepareRecording(recording, settings);
  const start = result.span?.start ?? 0;
  const end = result.span?.end ?? recording.sampleCount;
  const total = prepared.total.force.slice(start, end);
  return {
    trial: result,
    rateHz: recording.rateHz,
    startSample: start,
    total,
    plates: recording.plates.map((plate, index) => ({
      name: plate.name,
      limb: plate.limb,
      force: prepared.forces[index]!.slice(start, end),
    })),
    filtered: zeroLagFilter(total, recording.rateHz, settings.filterHz, settings),
    ...motionCurves(analysis, result, start, total),
    phases: analyzed === undefined ? [] : tracePhases(result, analyzed.jump, recording.rateHz, end),
  };
}

function motionCurves(
  analysis: SessionAnalysis,
  result: TrialResult,
  start: number,
  total: Float64Array,
): Pick<TrialTrace, "velocity" | "displacement" | "power"> {
  const motion = analysis.trials.get(trialKey(result.file, result.trial))?.jump?.jump.motion;
  if (motion === undefined || !knowsVelocity(motion)) {
    return { velocity: new Float64Array(0), displacement: new Float64Array(0), power: new Float64Array(0) };
  }
  const known = (sample: number): boolean => sample >= motion.startSample && sample <= lastSample(motion);
  const velocity = total.map((_, index) => (known(start + index) ? velocityAt(motion, start + index) : Number.NaN));
  const displacement = total.map((_, index) => (known(start + index) ? positionAt(motion, start + index) : Number.NaN));
  return { velocity, displacement, power: velocity.map((speed, index) => speed * total[index]!) };
}

function tracePhases(
  result: TrialResult,
  { events, hops }: JumpMotion,
  rateHz: number,
  end: number,
): readonly TrialPhase[] {
  const window = result.weight?.window;
  const phase = (name: TrialPhase["name"], from: number, to: number): TrialPhase => ({
    name,
    startSeconds: from / rateHz,
    endSeconds: to / rateHz,
  });
  const { unweighting, braking, propulsion, flight } = phasesOf(events);
  const named = { unweighting, braking, propulsion, flight };
  const phases = [
    ...(window === undefined ? [] : [phase("weighing", window.start, window.end)]),
    ...Object.entries(named).flatMap(([name, each]) =>
      each === undefined ? [] : [phase(name as keyof typeof named, each.from, each.to)],
    ),
    ...(events.touchdown === undefined ? [] : [phase("landing", events.touchdown, events.landingEnd ?? end - 1)]),
    ...(hops === undefined ? [] : hopPhases(hops, phase)),
  ];
  return phases.sort((a, b) => a.startSeconds - b.startSeconds);
}

function hopPhases(
  { entryTakeoff, contacts }: HopBout,
  phase: (name: TrialPhase["name"], from: number, to: number) => TrialPhase,
): readonly TrialPhase[] {
  const left = [entryTakeoff, ...contacts.map((contact) => contact.takeoff)];
  return contacts.flatMap((contact, index) => [
    ...(left[index] === undefined ? [] : [phase("flight", left[index], contact.touchdown)]),
    ...(contact.takeoff === undefined ? [] : [phase("contact", contact.touchdown, contact.takeoff)]),
  ]);
}

/** Curves of one trial for drawing. All arrays span `startSample` to the end of the trial, one value a sample. */
export interface TrialTrace {
  readonly trial: TrialResult;
  readonly rateHz: number;
  readonly startSample: number;
  /** Total force in newtons, plate zero removed. */
  readonly total: Float64Array;
  /** Force of each plate; one entry where one plate was used. */
  readonly plates: readonly { readonly name: string; readonly limb: Limb; readonly force: Float64Array }[];
  /** Total force after the display filter, newtons. */
  readonly filtered: Float64Array;
  /** Metres a second, upward positive; NaN before the weighing window starts. Empty when the trial has no weight. */
  readonly velocity: Float64Array;
  /** Metres from the position at onset, of drop tests and hops in the final standing. Empty when the trial has none. */
  readonly displacement: Float64Array;
  /** Watts. Empty when the trial has no velocity. */
  readonly power: Float64Array;
  readonly phases: readonly TrialPhase[];
}

/** One phase of a trial, from event to event. */
export interface TrialPhase {
  readonly name: "weighing" | "unweighting" | "braking" | "propulsion" | "flight" | "landing" | "contact";
  readonly startSeconds: number;
  readonly endSeconds: number;
}
