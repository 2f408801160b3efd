import type { Settings } from "../settings/settings.ts";
import type { KnownShape } from "./apply-layout.ts";
import type { RecordingFile } from "./file.ts";
import { readerOf } from "./readers.ts";
import type { LayoutAnswers } from "./reading-statements.ts";
import type { ReadRecording } from "./recording-as-read.ts";

/**
 * Reads one file as a recording, by the reader that takes it. Any bytes are allowed; what is wrong or had to be decided
 * is in the findings, and a refused file has no recording.
 * @param layouts saved layouts; one whose shape is that of the file answers what the person has not.
 */
export function readRecording(
  file: RecordingFile,
  answers: LayoutAnswers,
  settings: Settings,
  layouts: readonly KnownShape[] = [],
): ReadRecording {
  return readerOf(file.bytes).read(file, { answers, layouts }, settings);
}
