import { inspectTable } from "./inspect-table.ts";
import { readRecordingAndTable } from "./read-table-recording.ts";
import type { Reader } from "./reader.ts";

/** Reads delimited text with its columns, rate, unit, sign and plates. Any bytes may be meant as text. */
export const tableReader: Reader = {
  kind: "delimited",
  recognises: () => true,
  read: (file, request, settings) => readRecordingAndTable(file, request, settings).read,
  inspect: inspectTable,
};
