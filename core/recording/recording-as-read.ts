import type { Finding } from "../ground/finding.ts";
import type { RecordingFile } from "./file.ts";
import type { FileReading } from "./file-reading.ts";
import type { Recording } from "./recording.ts";

/** A file as it was read, before any trial is looked at. */

export interface ReadRecording {
  readonly file: RecordingFile;
  /** What was understood; absent when the file is neither table nor C3D. */
  readonly reading?: FileReading | undefined;
  /** Absent when the file was refused. */
  readonly recording?: Recording | undefined;
  /** Refusals and warnings about the file as a whole. */
  readonly findings: readonly Finding[];
}
