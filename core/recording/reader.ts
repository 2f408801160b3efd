import type { Settings } from "../settings/settings.ts";
import type { KnownShape } from "./apply-layout.ts";
import type { RecordingFile } from "./file.ts";
import type { FileInspection } from "./file-inspection.ts";
import type { FileReading } from "./file-reading.ts";
import type { LayoutAnswers } from "./reading-statements.ts";
import type { ReadRecording } from "./recording-as-read.ts";

/** What is asked of a reading beside the file itself. */
export interface ReadingRequest {
  readonly answers: LayoutAnswers;
  /** Saved layouts; one whose shape is that of the file answers what the person has not. */
  readonly layouts: readonly KnownShape[];
}

/** What is asked of an inspection beside the file itself. */
export interface InspectionRequest extends ReadingRequest {
  /** Samples (rows of a delimited file), from 0, whose values are wanted with full precision. */
  readonly sampleIndices: readonly number[];
}

/** One way to make a recording of bytes. Nothing of it throws, whatever the bytes are. */
export interface Reader {
  /** The kind its readings carry; what people read of such a file stands in `reader-words.ts`. */
  readonly kind: FileReading["kind"];
  /** True for the bytes of its format, whole or damaged, so that a damaged file is refused as what it is. */
  readonly recognises: (bytes: Uint8Array) => boolean;
  /** What is wrong or had to be decided is in the findings; a refused file has no recording. */
  readonly read: (file: RecordingFile, request: ReadingRequest, settings: Settings) => ReadRecording;
  /** Everything that was understood of the file, with values of the samples asked for. */
  readonly inspect: (file: RecordingFile, request: InspectionRequest, settings: Settings) => FileInspection;
}
