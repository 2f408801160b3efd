import { isC3d } from "../bytes/c3d/is-c3d.ts";
import type { Table } from "../bytes/table.ts";
import type { Settings } from "../settings/settings.ts";
import type { KnownShape } from "./apply-layout.ts";
import { inspectC3d } from "./c3d/inspect-c3d.ts";
import { seriesFigures } from "./c3d/series-figures.ts";
import type { RecordingFile } from "./file.ts";
import type { FileInspection, InspectedColumn } from "./file-inspection.ts";
import { readRecordingAndTable } from "./read-recording.ts";
import type { ColumnReading, LayoutAnswers } from "./request.ts";

/** What is asked of an inspection beside the file itself. */
export interface InspectionRequest {
  readonly answers: LayoutAnswers;
  readonly layouts: readonly KnownShape[];
  /** Samples (rows of a delimited file), from 0, whose values are wanted with full precision. */
  readonly sampleIndices: readonly number[];
}

/**
 * Shows everything that was understood of one file: dialect, header, every channel with its part, unit, range, mean and
 * values, the rate and where it comes from, and all findings. Never throws on any bytes.
 */
export function inspectFile(file: RecordingFile, request: InspectionRequest, settings: Settings): FileInspection {
  const { answers, layouts, sampleIndices } = request;
  if (isC3d(file.bytes)) return inspectC3d(file.bytes, sampleIndices, settings);

  const { read, table } = readRecordingAndTable(file, answers, settings, layouts);
  const { reading, recording, findings } = read;
  if (table === undefined || reading?.kind !== "delimited") return { kind: "unreadable", findings };

  const { columns, ...understood } = reading;
  return {
    ...understood,
    thousandsMark: table.dialect.thousandsMark,
    header: table.header,
    firstRowLine: table.lineOfRow[0] ?? 0,
    lastRowLine: table.lineOfRow.at(-1) ?? 0,
    channels: columns.map((column, index) => inspectColumn(column, index, table, sampleIndices)),
    ...(recording === undefined
      ? {}
      : {
          recording: {
            rateHz: recording.rateHz,
            sampleCount: recording.sampleCount,
            timeOriginSeconds: recording.timeOriginSeconds,
          },
        }),
    plates: (recording?.plates ?? []).map(({ name, limb, proof, force }) => ({
      name,
      limb,
      proof,
      newtons: seriesFigures(force, sampleIndices),
    })),
    findings,
  };
}

function inspectColumn(
  reading: ColumnReading,
  index: number,
  { columns, clocks, dialect }: Table,
  sampleIndices: readonly number[],
): InspectedColumn {
  const series = columns[index] ?? clocks[index]?.seconds ?? new Float64Array(0);
  return { ...reading, kind: dialect.kinds[index] ?? "text", ...seriesFigures(series, sampleIndices) };
}
