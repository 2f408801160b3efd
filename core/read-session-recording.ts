import type { ReadRecording, SessionInput } from "./analysis.ts";
import type { RecordingFile } from "./recording/file.ts";
import { readRecording } from "./recording/read-recording.ts";
import type { Plate } from "./recording/recording.ts";
import type { LayoutAnswers } from "./recording/request.ts";
import type { FileEntry, SessionDescription } from "./session.ts";
import type { Settings } from "./settings.ts";

/** Reads one file of a session with everything that was stated about it: options outrank session.json. */
export function readSessionRecording(file: RecordingFile, input: SessionInput, settings: Settings): ReadRecording {
  const entries = (input.description.files ?? []).filter((entry) => entry.file === file.path);
  const answers = { ...fromEntry(Object.assign({}, ...entries)), ...input.stated.layout };
  const read = readRecording(file, answers, settings);
  if (read.recording === undefined) return read;
  const plates = read.recording.plates.map((plate) => statedFoot(plate, input.description));
  return { ...read, recording: { ...read.recording, plates } };
}

function fromEntry(entry: Partial<FileEntry>): LayoutAnswers {
  const { rateHz, unit, columns } = entry;
  const statesFeet = columns?.left !== undefined || columns?.right !== undefined;
  return {
    ...(rateHz === undefined ? {} : { rateHz }),
    ...(unit === undefined ? {} : { unit }),
    ...columns,
    ...(statesFeet ? { platesStated: true } : {}),
  };
}

/** The foot that the tester says stood on a plate outranks the name of its column. */
function statedFoot(plate: Plate, description: SessionDescription): Plate {
  const stated = description.plates?.find((each) => each.column === plate.name);
  if (stated === undefined || plate.limb === "both") return plate;
  return { ...plate, limb: stated.foot, proof: "stated" };
}
