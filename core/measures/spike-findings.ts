import { type Finding, proseFinding } from "../ground/finding.ts";
import type { PreparedRecording } from "../trial/prepare-recording.ts";
import type { SampleSpan } from "../trial/sample-span.ts";
import { inPlateWords } from "../words/english/plate-words.ts";

/** At most this many places are named. No setting: it shortens a sentence. */
const namedPlaces = 3;

/** Single samples of a trial that stand alone: a disturbance of the recording, not a force. */
export function spikeFindings(prepared: PreparedRecording, span: SampleSpan): readonly Finding[] {
  const { rateHz, plates } = prepared.recording;
  const spikes = prepared.spikes.filter(({ sample }) => sample >= span.start && sample < span.end);
  if (spikes.length === 0) return [];
  const places = spikes
    .slice(0, namedPlaces)
    .map(({ plate, sample }) => `${inPlateWords(plates[plate]?.name ?? "")} at ${(sample / rateHz).toFixed(3)} s`);
  const more = spikes.length > namedPlaces ? `, and ${spikes.length - namedPlaces} more` : "";
  return [
    proseFinding(
      "spikes",
      "warning",
      `${spikes.length === 1 ? "One sample stands" : `${spikes.length} samples stand`} alone, far from the force around: a disturbance of the recording.`,
      "Look at these places; exclude the trial if one lies in the weighing, the push or the landing. Check cables and plugs.",
      { where: `${places.join(", ")}${more}` },
    ),
  ];
}
