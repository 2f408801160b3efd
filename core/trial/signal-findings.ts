import { type Finding, finding } from "../ground/finding.ts";
import type { Plate } from "../recording/recording.ts";
import type { Settings } from "../settings/settings.ts";
import type { ForceSignal } from "./force-signal.ts";
import { samplesPerValue } from "./repeated-samples.ts";
import { restingNoise } from "./resting-noise.ts";
import type { LoadSegments } from "./segment-load.ts";
import { turnedPlateFindings } from "./turned-plate.ts";

/**
 * What the force signal alone says against a whole recording: noise that hides a flight, a turned sign of one plate or
 * of all, a false rate.
 * @param total as recorded, no zero removed
 * @param steps one step of each plate's converter, newtons
 */
export function signalFindings(
  total: ForceSignal,
  plates: readonly Plate[],
  steps: readonly number[],
  segments: LoadSegments,
  settings: Settings,
): readonly Finding[] {
  const turned = turnedPlateFindings(plates, total.rateHz, segments.empty, settings);
  // What a turned plate makes of the total is no fault of its own.
  if (turned.length > 0) return turned;
  const forces = plates.map(({ force }) => force);
  return [
    ...noiseRefusal(total, segments, settings),
    ...signChange(total.rateHz, segments, settings),
    ...rateNotReal(forces, steps, total.rateHz, settings),
  ];
}

function noiseRefusal(total: ForceSignal, segments: LoadSegments, settings: Settings): readonly Finding[] {
  const { newtons, humHz } = restingNoise(total, settings);
  // A load that is no athlete's is said to be none where it is weighed: its noise is not in newtons either.
  const scaled = segments.steadyLoad > settings.bodyMassMaximumKg * settings.gravity;
  if (scaled || newtons <= settings.noiseRefuseNewtons) return [];
  const hum = humHz();
  return [finding("plate-noisy/recording", "refusal", { newtons, ...(hum === undefined ? {} : { humHz: hum }) })];
}

/** Nobody pulls a plate upwards: force of both signs means that the sign was changed, or the plate not zeroed. */
function signChange(rateHz: number, segments: LoadSegments, settings: Settings): readonly Finding[] {
  const { newtons, sample } = segments.lowest;
  const load = Math.max(segments.steadyLoad, settings.bodyMassMinimumKg * settings.gravity);
  if (newtons >= -settings.signChangesFraction * load) return [];
  const seconds = sample / rateHz;
  return [
    finding(
      "sign-changes",
      "refusal",
      { loadNewtons: load, lowestNewtons: newtons, seconds },
      { place: { at: "time", seconds, decimals: 2 } },
    ),
  ];
}

function rateNotReal(
  forces: readonly Float64Array[],
  steps: readonly number[],
  rateHz: number,
  settings: Settings,
): readonly Finding[] {
  const times = samplesPerValue(forces, steps, rateHz, settings);
  if (times === 1) return [];
  return [finding("rate-not-real", "refusal", { times, realHz: rateHz / times, rateHz })];
}
