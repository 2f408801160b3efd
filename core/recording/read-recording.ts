import { isC3d } from "../bytes/c3d/is-c3d.ts";
import { readTable } from "../bytes/read-table.ts";
import type { Table } from "../bytes/table.ts";
import type { Settings } from "../settings/settings.ts";
import { applyLayout, type KnownShape } from "./apply-layout.ts";
import { readC3dRecording } from "./c3d/read-c3d-recording.ts";
import type { RecordingFile } from "./file.ts";
import { layoutShape } from "./layout-shape.ts";
import type { ReadRecording } from "./recording-as-read.ts";
import { recordingFromTable } from "./recording-from-table.ts";
import type { LayoutAnswers } from "./request.ts";

/**
 * Reads one file as a recording: a C3D file or delimited text with its columns, rate, unit, sign, plates. Any bytes are
 * allowed; what is wrong or had to be decided is in the findings, and a refused file has no recording.
 * @param layouts saved layouts; one whose shape is that of the file answers what the person has not.
 */
export function readRecording(
  file: RecordingFile,
  answers: LayoutAnswers,
  settings: Settings,
  layouts: readonly KnownShape[] = [],
): ReadRecording {
  if (isC3d(file.bytes)) return { file, ...readC3dRecording(file.bytes, answers, settings) };
  return readRecordingAndTable(file, answers, settings, layouts).read;
}

/** The same for text, with the table behind it; it is absent when the bytes hold none. */
export function readRecordingAndTable(
  file: RecordingFile,
  answers: LayoutAnswers,
  settings: Settings,
  layouts: readonly KnownShape[],
): { readonly read: ReadRecording; readonly table?: Table } {
  // Bytes to columns of numbers.
  const first = readTable(file.bytes);
  if (first.table === undefined) return { read: { file, findings: first.findings } };

  // What is known of files of this shape, and whether a stated decimal mark reads the numbers otherwise.
  const shape = layoutShape(first.table);
  const applied = applyLayout(shape, layouts, answers);
  const { decimalMark } = applied.answers;
  const { table, findings } = decimalMark === undefined ? first : readTable(file.bytes, { decimalMark });
  if (table === undefined) return { read: { file, findings } };

  const said = { answers: applied.answers, shape, findings: applied.findings };
  return { read: { file, ...recordingFromTable(table, findings, said, settings) }, table };
}
