import { outlinePlate } from "../../core/recording/outline-plate.ts";
import type { SessionAnalysis } from "../../core/session/session-analysis.ts";
import type { RecordingOutline } from "../boundary/recording-replies.ts";
import { trialsOf } from "./recording-view.ts";

/** Points of a force curve that is drawn whole. */
const outlinePoints = 4000;

/** The force of a whole file as it was understood; undefined where nothing was understood as force. */
export function outlineOf(analysis: SessionAnalysis, path: string): RecordingOutline | undefined {
  const recording = analysis.recordings.get(path)?.recording;
  if (recording === undefined) return undefined;
  return {
    plates: recording.plates.map((plate) => outlinePlate(plate, recording, outlinePoints)),
    durationSeconds: recording.sampleCount / recording.rateHz,
    trials: trialsOf(analysis, path).flatMap(({ trial, span }) =>
      span === undefined ? [] : [{ trial, from: span.start / recording.rateHz, to: span.end / recording.rateHz }],
    ),
  };
}
