import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { PreparedRecording } from "./prepare-recording.ts";

/**
 * Two plates that show the same force in every sample: two amplifiers never have the same noise, so one plate was
 * exported twice, or one force divided in two. Neither tells left from right, and the former doubles half a weight.
 */
export function equalPlatesFindings({ recording }: PreparedRecording, settings: Settings): readonly Finding[] {
  const { plates } = recording;
  const [first, second] = plates;
  if (first === undefined || second === undefined || plates.length !== 2) return [];
  if (first.force.some((newtons, index) => newtons !== second.force[index])) return [];
  if (noiseFromSampleToSample(first.force) < settings.equalPlatesNoiseNewtons) return [];
  return [
    finding(
      "plates-equal",
      "refusal",
      { first: first.name, second: second.name, samples: first.force.length },
      { place: { at: "plates", names: [first.name, second.name] }, answers: [{ asks: "columns" }] },
    ),
  ];
}

function noiseFromSampleToSample(force: Float64Array): number {
  const bends = force.subarray(2).map((newtons, index) => Math.abs(newtons - 2 * force[index + 1]! + force[index]!));
  return bends.sort()[bends.length >> 1] ?? 0;
}
