import { readTable } from "../bytes/read-table.ts";
import type { Table } from "../bytes/table.ts";
import type { Settings } from "../settings/settings.ts";
import { applyLayout } from "./apply-layout.ts";
import type { RecordingFile } from "./file.ts";
import { layoutShape } from "./layout-shape.ts";
import type { ReadingRequest } from "./reader.ts";
import type { ReadRecording } from "./recording-as-read.ts";
import { recordingFromTable } from "./recording-from-table.ts";

/** Reads delimited text as a recording, with the table behind it; it is absent when the bytes hold none. */
export function readRecordingAndTable(
  file: RecordingFile,
  { answers, layouts }: ReadingRequest,
  settings: Settings,
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

  const statements = { answers: applied.answers, shape, findings: applied.findings };
  return { read: { file, ...recordingFromTable(table, findings, statements, settings) }, table };
}
