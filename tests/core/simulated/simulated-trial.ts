import type { EventName } from "../../../core/ground/event-name.ts";
import type { Limb } from "../../../core/ground/limb.ts";
import type { Recording } from "../../../core/recording/recording.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings, type Settings } from "../../../core/settings/settings.ts";
import type { SimulatedRecording } from "../../../core/simulate/countermovement-jump.ts";
import { told } from "../../told.ts";

/** A simulated recording as the program would hold it after import. */
export function asRecording(simulated: SimulatedRecording): Recording {
  return {
    rateHz: simulated.rateHz,
    sampleCount: simulated.sampleCount,
    timeOriginSeconds: 0,
    plates: simulated.plates.map((plate) => ({ ...plate, proof: "stated" })),
  };
}

/** Analyses a simulated countermovement jump alone. */
export function analyzeSimulated(
  simulated: SimulatedRecording,
  limb: Limb,
  settings: Settings = defaultSettings,
): readonly TrialResult[] {
  const statement = { test: "countermovementJump", limb } as const;
  return analyzeRecording(asRecording(simulated), statement, settings).map((each) => each.result);
}

/** The only trial of a simulated jump; throws with the findings when it was refused. */
export function onlyTrial(simulated: SimulatedRecording, limb: Limb): TrialResult {
  const trials = analyzeSimulated(simulated, limb);
  const [trial] = trials;
  if (trials.length !== 1 || trial === undefined) throw new Error(`Expected one trial, found ${trials.length}.`);
  if (trial.status === "refused") throw new Error(trial.findings.map((each) => told(each).message).join(" "));
  return trial;
}

/** Seconds of an event of the whole body. */
export function eventTime(trial: TrialResult, name: EventName): number {
  const event = trial.events.find((each) => each.name === name && each.side === undefined);
  if (event === undefined) throw new Error(`No ${name} was found.`);
  return event.time;
}

/** Value of a measure; the side of the trial unless another is given. */
export function measured(trial: TrialResult, id: string, side: Limb | undefined = trial.limb): number {
  const measure = trial.measures.find((each) => each.id === id && each.side === side);
  if (measure === undefined) throw new Error(`No ${id} was made.`);
  return measure.value;
}

/** Standard uncertainty of a measure. */
export function uncertaintyOf(trial: TrialResult, id: string): number {
  const measure = trial.measures.find((each) => each.id === id && each.side === trial.limb);
  if (measure?.uncertainty === undefined) throw new Error(`No uncertainty of ${id} was made.`);
  return measure.uncertainty;
}

/** The p-th quantile (0 to 1) of some values, by the nearest rank. */
export function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.max(0, Math.ceil(p * sorted.length) - 1))]!;
}
