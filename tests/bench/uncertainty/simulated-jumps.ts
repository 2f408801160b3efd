import type { Limb } from "../../../core/ground/limb.ts";
import type { TrialResult } from "../../../core/result/trial-result.ts";
import { analyzeRecording } from "../../../core/session/analyze-recording.ts";
import { defaultSettings } from "../../../core/settings/settings.ts";
import { type SimulatedRecording, simulateCountermovementJump } from "../../../core/simulate/countermovement-jump.ts";
import { drawDropJump } from "../../../core/simulate/draw-drop.ts";
import { drawJump } from "../../../core/simulate/draw-jump.ts";
import { simulateDropJump } from "../../../core/simulate/drop-jump.ts";
import type { DropJumpTruth } from "../../../core/simulate/drop-truth.ts";
import type { JumpTruth } from "../../../core/simulate/truth.ts";
import { asRecording } from "../../core/simulated/simulated-trial.ts";

/** What the jumps are drawn over. */
export interface Population {
  readonly trials: number;
  /** 1: odd seeds, kept for claims; 0: even seeds, for tuning. */
  readonly firstSeed: 0 | 1;
  readonly rateHz: number;
  readonly plateNoiseNewtons: number;
  /** Absent: the simulator's whole spectrum. */
  readonly swayBandHz?: readonly [number, number];
  /** RMS displacement of the sway; absent: as the simulator draws it, 0.4 to 1.5 mm. */
  readonly swayMetres?: readonly [number, number];
  /** Quiet standing at the end that weighs; absent: as the simulator draws it. */
  readonly quietSeconds?: number;
}

/** One countermovement jump, read with quiet standing at both ends and with the standing before it alone. */
export interface StandingJump {
  readonly truth: JumpTruth;
  readonly limb: Limb;
  readonly bothEnds: TrialResult;
  readonly oneEnd: TrialResult;
}

/** One drop jump, read backwards from the quiet standing after it. */
export interface DroppedJump {
  readonly truth: DropJumpTruth;
  readonly limb: Limb;
  readonly trial: TrialResult;
}

const layouts = [
  { limb: "both", plates: "two" },
  { limb: "left", plates: "one" },
  { limb: "both", plates: "two" },
  { limb: "both", plates: "one" },
  { limb: "both", plates: "two" },
  { limb: "right", plates: "two" },
] as const;

/** Countermovement jumps, six layouts in turn. */
export function standingJumps(population: Population): StandingJump[] {
  return seedsOf(population).map((seed, index) => {
    const layout = layouts[index % layouts.length]!;
    const drawn = drawJump(seed, { ...layout, kind: "noisy", ratesHz: [population.rateHz] });
    const { quietSeconds } = population;
    const simulated = simulateCountermovementJump({
      ...drawn,
      ...disturbance(population, drawn.swayMetres),
      ...(quietSeconds === undefined ? {} : { quietSecondsBefore: quietSeconds }),
    });
    const { truth } = simulated;
    return {
      truth,
      limb: layout.limb,
      bothEnds: only(simulated, "countermovementJump", layout.limb),
      // The same samples up to the lowest point of the landing: nobody stands still after it.
      oneEnd: only(until(simulated, truth.events.landingEnd), "countermovementJump", layout.limb),
    };
  });
}

/** Drop jumps, six layouts in turn. */
export function droppedJumps(population: Population): DroppedJump[] {
  return seedsOf(population).map((seed, index) => {
    const layout = layouts[index % layouts.length]!;
    const drawn = drawDropJump(seed, { ...layout, kind: "noisy", ratesHz: [population.rateHz] });
    const { quietSeconds } = population;
    const simulated = simulateDropJump({
      ...drawn,
      ...disturbance(population, drawn.swayMetres),
      ...(quietSeconds === undefined ? {} : { quietSecondsAfter: quietSeconds }),
    });
    return { truth: simulated.truth, limb: layout.limb, trial: only(simulated, "dropJump", layout.limb) };
  });
}

/** The seeds of a population. */
export function seedsOf({ trials, firstSeed }: Population): number[] {
  return Array.from({ length: trials }, (_, index) => 2 * index + firstSeed);
}

/** Noise and sway of a population; the sway drawn by the simulator is stretched onto the wanted bounds. */
function disturbance({ plateNoiseNewtons, swayBandHz, swayMetres }: Population, drawnMetres: number = drawnSway[0]) {
  const part = (drawnMetres - drawnSway[0]) / (drawnSway[1] - drawnSway[0]);
  return {
    plateNoiseNewtons,
    ...(swayBandHz === undefined ? {} : { swayBandHz }),
    ...(swayMetres === undefined ? {} : { swayMetres: swayMetres[0] + part * (swayMetres[1] - swayMetres[0]) }),
  };
}

/** Bounds of the sway that the simulator draws, RMS metres (core/simulate/draw-jump.ts). */
export const drawnSway = [0.0004, 0.0015] as const;

function until(recording: SimulatedRecording, seconds: number): SimulatedRecording {
  const sampleCount = Math.ceil(seconds * recording.rateHz);
  return {
    rateHz: recording.rateHz,
    sampleCount,
    plates: recording.plates.map((plate) => ({ ...plate, force: plate.force.slice(0, sampleCount) })),
  };
}

function only(recording: SimulatedRecording, test: "countermovementJump" | "dropJump", limb: Limb): TrialResult {
  const trials = analyzeRecording(asRecording(recording), { test, limb }, defaultSettings);
  const [trial] = trials;
  if (trials.length !== 1 || trial === undefined) throw new Error(`Expected one trial, found ${trials.length}.`);
  return trial.result;
}
