import { type Finding, finding } from "../ground/finding.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import type { SampleSpan } from "../trial/sample-span.ts";

/** At most this many places are named. No setting: it shortens a sentence. */
const namedPlaces = 3;

/** Single samples of a trial that stand alone: a disturbance of the recording, not a force. */
export function spikeFindings(prepared: PreparedRecording, span: SampleSpan): readonly Finding[] {
  const { rateHz, plates } = prepared.recording;
  const spikes = prepared.spikes.filter(({ sample }) => sample >= span.start && sample < span.end);
  if (spikes.length === 0) return [];
  const samples = spikes.slice(0, namedPlaces).map(({ plate, sample }) => ({
    plate: plates[plate]?.name ?? "",
    seconds: sample / rateHz,
  }));
  const place = { at: "samples", samples, more: spikes.length - samples.length } as const;
  return [finding("spikes", "warning", { samples: spikes.length }, { place })];
}
