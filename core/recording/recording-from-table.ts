import type { Table } from "../bytes/table.ts";
import { type Finding, isRefused } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { AppliedLayout } from "./apply-layout.ts";
import { assignColumns } from "./assign-columns.ts";
import { findMass, massContradiction } from "./body-mass.ts";
import { type ColumnHint, readColumnHints } from "./column-hint.ts";
import type { ColumnRoles } from "./column-roles.ts";
import { counterFindings } from "./counter-findings.ts";
import { describeTable } from "./describe-table.ts";
import type { ForceColumn } from "./force-column.ts";
import { readForces } from "./force-columns.ts";
import { needsMass } from "./force-units.ts";
import { fieldsAbove } from "./header-fields.ts";
import { readHeaderHints } from "./header-hints.ts";
import { headerUnit } from "./header-unit.ts";
import { makePlates } from "./plates.ts";
import { rateFindings } from "./rate-findings.ts";
import type { LayoutAnswers } from "./reading-statements.ts";
import type { PlateProof, Recording } from "./recording.ts";
import type { ReadRecording } from "./recording-as-read.ts";
import { type EvenTarget, resample, resampled } from "./resample.ts";
import { secondClockFindings } from "./second-clock.ts";
import type { LayoutShape } from "./shape-schema.ts";
import { overrulesWritten, unitDoubt } from "./standing-load.ts";
import { statedRates, unitlessContradictions, unitlessRate } from "./stated-rate.ts";
import { findTimeBase, type TimeBase, type TimeStatements } from "./time-base.ts";
import { timeUnitOf } from "./time-units.ts";
import type { UnitStatements } from "./unit-statements.ts";
import { findUsableRows } from "./usable-rows.ts";

/** What was said about a file, by a person or a saved layout. */
interface Said extends Pick<AppliedLayout, "answers" | "findings"> {
  readonly shape: LayoutShape;
}

/** Turns a table into a recording, or says why it is none. */
export function recordingFromTable(
  table: Table,
  tableFindings: readonly Finding[],
  { answers, shape, findings: layoutFindings }: Said,
  settings: Settings,
): Omit<ReadRecording, "file"> {
  // What each column is: stated, else by name and unit, else by behaviour; what the header says beside it.
  const hints = clockHints(table, readColumnHints(table.names, table.units));
  const values = table.columns.map((column, index) => column ?? table.clocks[index]?.seconds);
  const headerHints = readHeaderHints(fieldsAbove(table), table.dialect.decimalMark, settings);
  const roles = assignColumns(hints, values, answers, settings);

  // Rows that can be used, and the time base over them.
  const usedColumns = [roles.time, ...roles.left, ...roles.right, ...roles.total].filter(
    (index) => index !== undefined,
  );
  const span = findUsableRows(table, usedColumns, hints);
  const unitless = unitlessRate(headerHints);
  const statements: TimeStatements = {
    rates: statedRates(answers, headerHints),
    ...(unitless === undefined ? {} : { unitless }),
    ...(answers.resample === undefined ? {} : { resample: answers.resample }),
    ...(answers.resampleHz === undefined ? {} : { resampleHz: answers.resampleHz }),
  };
  const time = timeBaseOf(table, values, hints, roles, span, statements, settings);

  // Forces in newtons, upward positive.
  const mass = findMass(answers.massKg, headerHints);
  const header = headerUnit(headerHints);
  const units: UnitStatements = {
    ...(answers.unit === undefined ? {} : { stated: answers.unit }),
    ...(header === undefined ? {} : { header }),
    ...(mass === undefined ? {} : { mass }),
  };
  const forces = forcesIn(table, hints, roles, span, units, settings);
  const usesMass = forces.columns.some(({ unit }) => unit !== undefined && needsMass(unit));
  const reading = describeTable({
    table,
    hints,
    headerHints,
    roles,
    time,
    forces: forces.columns,
    ...(mass === undefined ? {} : { mass }),
    shape,
    span,
    ...(answers.layout === undefined ? {} : { layout: answers.layout.name }),
  });
  // Damaged rows make gaps and odd steps of their own; they are named once, as what they are.
  if (isRefused(tableFindings)) return { reading, findings: tableFindings };
  const { target } = time;
  const slowest =
    target === undefined || time.rateHz === undefined ? time.rateHz : Math.min(target.fromHz, target.toHz);
  const findings: Finding[] = [
    ...tableFindings,
    ...layoutFindings,
    ...roles.findings,
    ...span.findings,
    ...(isRefused(span.findings) ? [] : time.findings),
    ...counterFindings(hints, values, roles.time, table.lineOfRow, settings),
    ...(roles.time === undefined || time.unit === "" || table.clocks[roles.time] !== undefined
      ? []
      : secondClockFindings(hints, table.columns, { index: roles.time, unit: time.unit }, settings)),
    ...forces.findings,
    ...(usesMass ? massContradiction(mass, headerHints, settings) : []),
    ...unitlessContradictions(headerHints, target?.fromHz ?? time.rateHz, settings),
    ...rateFindings(slowest, settings),
    ...(target === undefined ? [] : [resampled(target)]),
  ];
  if (!isRefused(findings)) findings.push(...unitDoubt(forces.columns, settings));
  if (isRefused(findings) || time.rateHz === undefined) return { reading, findings };

  // Plates with their limbs.
  const columns = target === undefined ? forces.columns : forces.columns.map((column) => onEvenTime(column, target));
  const clock = { rateHz: time.rateHz };
  const { plates, findings: plateFindings } = makePlates(columns, proofOf(answers), settings, clock);
  const recording: Recording = {
    rateHz: time.rateHz,
    sampleCount: columns[0]?.force.length ?? 0,
    timeOriginSeconds: time.originSeconds,
    plates,
  };
  return { reading, recording, findings: [...findings, ...plateFindings] };
}

/** A clock is time in seconds, whatever its column is called. */
function clockHints(table: Table, hints: readonly ColumnHint[]): readonly ColumnHint[] {
  return hints.map((hint, index) => (table.clocks[index] === undefined ? hint : { ...hint, kind: "time", unit: "s" }));
}

function timeBaseOf(
  table: Table,
  values: readonly (Float64Array | undefined)[],
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  span: { readonly start: number; readonly end: number },
  statements: TimeStatements,
  settings: Settings,
): TimeBase {
  const column = roles.time === undefined ? undefined : values[roles.time];
  if (roles.time === undefined || column === undefined) return findTimeBase(undefined, statements, settings);
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
    statements,
    settings,
  );
}

/** The forces; where the written unit cannot be and the stated one can, the person is believed and that is said. */
function forcesIn(
  table: Table,
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  span: { readonly start: number; readonly end: number },
  units: UnitStatements,
  settings: Settings,
): { readonly columns: readonly ForceColumn[]; readonly findings: readonly Finding[] } {
  const forces = readForces(table, hints, roles, span, units, settings);
  const { stated, ...written } = units;
  if (stated === undefined || !forces.findings.some((each) => each.code === "unit-contradicts")) return forces;
  const asWritten = readForces(table, hints, roles, span, written, settings);
  const overruled = overrulesWritten(asWritten.columns, stated, settings);
  if (overruled === undefined) return forces;
  const asStated = readForces(table, hints, roles, span, { ...units, overrules: true }, settings);
  return { columns: asStated.columns, findings: [...asStated.findings, overruled] };
}

function proofOf({ platesStated, swapPlates, layout }: LayoutAnswers): PlateProof {
  if (layout?.provesPlates === true) return "layout";
  return platesStated === true || swapPlates === true ? "stated" : "unproved";
}

function onEvenTime(column: ForceColumn, target: EvenTarget): ForceColumn {
  return { ...column, force: resample(column.force, target) };
}
