import type { FileInspection } from "../../core/recording/file-inspection.ts";
import { inspectFile } from "../../core/recording/inspect-file.ts";
import { readRecording } from "../../core/recording/read-recording.ts";
import type { LayoutAnswers } from "../../core/recording/reading-statements.ts";
import type { ReadRecording } from "../../core/recording/recording-as-read.ts";
import { defaultSettings } from "../../core/settings/settings.ts";

/** What the common route says of one file. */
export interface ReadBytes {
  readonly read: ReadRecording;
  readonly inspection: FileInspection;
}

/** Reads and inspects bytes as the program does with a file. */
export function readBytes(
  name: string,
  bytes: Uint8Array,
  answers: LayoutAnswers = {},
  sampleIndices: readonly number[] = [],
): ReadBytes {
  const file = { path: name, bytes, sha256: "" };
  return {
    read: readRecording(file, answers, defaultSettings),
    inspection: inspectFile(file, { answers, layouts: [], sampleIndices }, defaultSettings),
  };
}

/** Findings as "code:severity", in order. */
export function codesOf({ findings }: Pick<ReadRecording, "findings">): string[] {
  return findings.map(({ code, severity }) => `${code}:${severity}`);
}
