import type { ReadRecording } from "../analysis.ts";
import { readTable } from "../bytes/read-table.ts";
import type { Table } from "../bytes/table.ts";
import { type Finding, isRefused } from "../finding.ts";
import type { Settings } from "../settings.ts";
import { type ColumnHint, readColumnHint, timeUnitOf } from "./column-hint.ts";
import { assignColumns, type ColumnRoles } from "./column-roles.ts";
import type { RecordingFile } from "./file.ts";
import { type ForceColumn, readForces } from "./force-columns.ts";
import { makePlates } from "./plates.ts";
import { rateFindings } from "./rate-findings.ts";
import type { Recording } from "./recording.ts";
import type { ColumnReading, LayoutAnswers, TableReading } from "./request.ts";
import { findTimeBase, type TimeBase } from "./time-base.ts";
import { findUsableRows } from "./usable-rows.ts";

/**
 * Reads one delimited text file as a recording: columns, rate, unit, sign, plates. Any bytes are allowed; what is wrong
 * or had to be decided is in the findings, and a refused file has no recording.
 */
export function readRecording(file: RecordingFile, answers: LayoutAnswers, settings: Settings): ReadRecording {
  // Bytes to columns of numbers.
  const { table, findings: tableFindings } = readTable(file.bytes);
  if (table === undefined) return { file, findings: tableFindings };

  // What each column is: stated, else by name and unit, else by behaviour.
  const hints = table.names.map((name, index) => readColumnHint(name, table.units[index] ?? ""));
  const roles = assignColumns(hints, table.columns, answers);

  // Rows that can be used, and the time base over them.
  const usedColumns = [roles.time, roles.left, roles.right, roles.total].filter((index) => index !== undefined);
  const span = findUsableRows(table, usedColumns, hints);
  const time = timeBaseOf(table, hints, roles, span, answers.rateHz, settings);

  // Forces in newtons, upward positive.
  const forces = readForces(table, hints, roles, span, answers.unit, settings);
  const reading = describeTable(table, hints, roles, time, forces.columns);
  // Damaged rows make gaps and odd steps of their own; they are named once, as what they are.
  if (isRefused(tableFindings)) return { file, reading, findings: tableFindings };
  const findings: Finding[] = [
    ...tableFindings,
    ...roles.findings,
    ...span.findings,
    ...(isRefused(span.findings) ? [] : time.findings),
    ...forces.findings,
    ...rateFindings(time.rateHz, settings),
  ];
  if (isRefused(findings) || time.rateHz === undefined) return { file, reading, findings };

  // Plates with their limbs.
  const { plates, findings: plateFindings } = makePlates(forces.columns, answers.platesStated === true, settings, {
    rateHz: time.rateHz,
  });
  const recording: Recording = {
    rateHz: time.rateHz,
    sampleCount: span.end - span.start,
    timeOriginSeconds: time.originSeconds,
    plates,
  };
  return { file, reading, recording, findings: [...findings, ...plateFindings] };
}

function timeBaseOf(
  table: Table,
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  span: { readonly start: number; readonly end: number },
  statedHz: number | undefined,
  settings: Settings,
): TimeBase {
  const column = roles.time === undefined ? undefined : table.columns[roles.time];
  if (roles.time === undefined || column === undefined) return findTimeBase(undefined, statedHz, settings);
  const hint = hints[roles.time]!;
  const unit = timeUnitOf(hint.unit) ?? (hint.kind === "index" ? "index" : "unknown");
  return findTimeBase(
    {
      stamps: column.subarray(span.start, span.end),
      unit,
      writtenUnit: hint.unit,
      saysTime: hint.kind === "time",
      lineOfRow: table.lineOfRow.subarray(span.start, span.end),
    },
    statedHz,
    settings,
  );
}

function describeTable(
  table: Table,
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  time: TimeBase,
  forces: readonly ForceColumn[],
): TableReading {
  const columns = hints.map((hint, index): ColumnReading => {
    const base = { position: index + 1, name: hint.written };
    const force = forces.find((each) => each.index === index);
    const reason = roles.reasons.get(index);
    if (force !== undefined) {
      return { ...base, role: "force", limb: force.limb, unit: force.unit ?? hint.unit, reason: reason ?? "" };
    }
    if (index === roles.time) {
      return { ...base, role: "time", unit: hint.unit === "" ? time.unit : hint.unit, reason: reason ?? "" };
    }
    return { ...base, role: "unused", unit: hint.unit, reason: unusedReason(table.columns[index], hint) };
  });
  const [first] = forces;
  return {
    encoding: table.encoding,
    delimiter: table.dialect.delimiter,
    decimalMark: table.dialect.decimalMark,
    headerLines: table.headerLines,
    rows: table.rows,
    columns,
    ...(time.rateHz === undefined ? {} : { rateHz: time.rateHz }),
    rateFrom: time.rateFrom,
    ...(first?.unit === undefined ? {} : { forceUnit: first.unit }),
    forceUnitFrom: first?.unitFrom ?? "unknown",
  };
}

function unusedReason(column: Float64Array | undefined, hint: ColumnHint): string {
  if (column === undefined) return "holds text";
  const isOther = hint.kind === "other" || hint.kind === "contradictory";
  return isOther ? "its name or unit says another quantity" : "not needed, or not clear what it holds";
}
