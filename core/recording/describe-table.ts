import type { Table } from "../bytes/table.ts";
import type { BodyMass } from "./body-mass.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnRoles } from "./column-roles.ts";
import type { ForceColumn } from "./force-column.ts";
import { needsMass } from "./force-units.ts";
import type { HeaderHint } from "./header-hint.ts";
import type { ColumnReading, TableReading } from "./request.ts";
import type { LayoutShape } from "./shape-schema.ts";
import { sourceText } from "./statement-source.ts";
import type { TimeBase } from "./time-base.ts";

/** Everything that was understood of a table. */
export interface UnderstoodTable {
  readonly table: Table;
  readonly hints: readonly ColumnHint[];
  readonly headerHints: readonly HeaderHint[];
  readonly roles: ColumnRoles;
  readonly time: TimeBase;
  readonly forces: readonly ForceColumn[];
  readonly mass?: BodyMass;
  readonly shape: LayoutShape;
  /** The rows whose numbers can be used. */
  readonly span: { readonly start: number; readonly end: number };
  /** Name of the saved layout that was applied. */
  readonly layout?: string;
}

/** The reading of a table in words and figures, for the person who imports it. */
export function describeTable(understood: UnderstoodTable): TableReading {
  const { table, hints, headerHints, roles, time, forces, mass, shape, layout, span } = understood;
  const [first] = forces;
  const timeColumn = roles.time === undefined ? undefined : hints[roles.time]?.written;
  const rowsKept = span.end - span.start;
  const isColumn = time.rateFrom === "time column" && timeColumn !== undefined && timeColumn !== "";
  return {
    kind: "delimited",
    encoding: table.encoding,
    delimiter: table.dialect.delimiter,
    decimalMark: table.dialect.decimalMark,
    lineCount: table.lineCount,
    headerLines: table.headerLines,
    hints: headerHints,
    rows: table.rows,
    rowsKept,
    rowsDropped: table.rows - rowsKept + table.rowsDropped,
    columns: hints.map((hint, index) => describeColumn(hint, index, understood)),
    ...(time.rateHz === undefined ? {} : { rateHz: time.rateHz }),
    rateFrom: time.rateFrom,
    rateSource: isColumn ? `column ${timeColumn}` : time.rateSource,
    ...(time.unit === "" ? {} : { timeUnit: time.unit }),
    ...(time.target === undefined ? {} : { resampledFromHz: time.target.fromHz }),
    ...(first?.unit === undefined ? {} : { forceUnit: first.unit }),
    forceUnitFrom: first?.unitFrom ?? "unknown",
    ...(mass !== undefined && forces.some(({ unit }) => unit !== undefined && needsMass(unit))
      ? { mass: { massKg: mass.massKg, source: sourceText(mass.source) } }
      : {}),
    shape,
    ...(layout === undefined ? {} : { layout }),
  };
}

function describeColumn(
  hint: ColumnHint,
  index: number,
  { table, roles, time, forces }: UnderstoodTable,
): ColumnReading {
  const marks = table.dialect.kinds[index] === "number" ? table.dialect.marks[index] : undefined;
  const base = {
    position: index + 1,
    name: hint.written,
    ...(marks === undefined ? {} : { decimalMark: marks.decimal }),
  };
  const force = forces.find((each) => each.indices.includes(index));
  const reason = roles.reasons.get(index);
  const because = { reason: reason?.words ?? "", confidence: reason?.confidence ?? "unclear" } as const;
  if (force !== undefined) {
    return { ...base, role: "force", limb: force.limb, unit: force.unit ?? hint.unit, ...because };
  }
  if (index === roles.time) {
    return { ...base, role: "time", unit: hint.unit === "" ? time.unit : hint.unit, ...because };
  }
  return { ...base, role: "unused", unit: hint.unit, ...unusedReason(table, index, hint) };
}

function unusedReason(table: Table, index: number, hint: ColumnHint): Pick<ColumnReading, "reason" | "confidence"> {
  if (table.clocks[index] !== undefined) return { reason: "holds clock times", confidence: "certain" };
  if (table.columns[index] === undefined) return { reason: "holds text", confidence: "certain" };
  if (hint.kind === "other" || hint.kind === "contradictory") {
    return { reason: "its name or unit says another quantity", confidence: "certain" };
  }
  if (hint.kind === "time" || hint.kind === "index") {
    return { reason: "its name says time or sample number; it was not used", confidence: "certain" };
  }
  return { reason: "not needed, or not clear what it holds", confidence: "unclear" };
}
