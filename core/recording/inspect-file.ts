import type { Settings } from "../settings/settings.ts";
import type { RecordingFile } from "./file.ts";
import type { FileInspection } from "./file-inspection.ts";
import type { InspectionRequest } from "./reader.ts";
import { readerOf } from "./readers.ts";

/**
 * Shows everything that was understood of one file, by the reader that takes it: header, every channel with its part,
 * unit, range, mean and values, the rate and where it comes from, and all findings. Never throws on any bytes.
 */
export function inspectFile(file: RecordingFile, request: InspectionRequest, settings: Settings): FileInspection {
  return readerOf(file.bytes).inspect(file, request, settings);
}
