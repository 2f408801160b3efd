import type { Table } from "../bytes/table.ts";
import type { Settings } from "../settings/settings.ts";
import { seriesFigures } from "./c3d/series-figures.ts";
import type { RecordingFile } from "./file.ts";
import type { FileInspection, InspectedColumn } from "./file-inspection.ts";
import { readRecordingAndTable } from "./read-table-recording.ts";
import type { InspectionRequest } from "./reader.ts";
import type { ColumnReading } from "./request.ts";

/** Everything that was understood of delimited text: dialect, header, every column with its part, unit, range, mean and values. */
export function inspectTable(file: RecordingFile, request: InspectionRequest, settings: Settings): FileInspection {
  const { sampleIndices } = request;
  const { read, table } = readRecordingAndTable(file, request, settings);
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
