import type { Table } from "../bytes/table.ts";
import { type Finding, finding } from "../finding.ts";
import type { Limb } from "../limb.ts";
import type { ForceUnit } from "../session.ts";
import type { Settings } from "../settings.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnRoles } from "./column-roles.ts";
import { forceUnitOf, isVoltage, newtonsPerUnit } from "./force-units.ts";

/** One force column, converted. */
export interface ForceColumn {
  /** From 0. */
  readonly index: number;
  /** The file's own name, or "column 3". */
  readonly name: string;
  /** False where the file names nothing. */
  readonly isNamed: boolean;
  readonly limb: Limb;
  /** Absent where no unit is known; the values are then as in the file. */
  readonly unit?: ForceUnit;
  readonly unitFrom: "header" | "stated" | "unknown";
  /** Newtons, upward positive, one value a usable row. */
  readonly force: Float64Array;
}

/** The force columns in newtons in the order of the file, with what is doubtful about unit and sign. */
export function readForces(
  table: Table,
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  span: { readonly start: number; readonly end: number },
  statedUnit: ForceUnit | undefined,
  settings: Settings,
): { readonly columns: readonly ForceColumn[]; readonly findings: readonly Finding[] } {
  const chosen = (
    [
      [roles.left, "left"],
      [roles.right, "right"],
      [roles.total, "both"],
    ] as const
  )
    .flatMap(([index, limb]) => (index === undefined ? [] : [{ index, limb }]))
    .sort((one, other) => one.index - other.index);
  const findings: Finding[] = [];
  const turned: string[] = [];
  const silent: string[] = [];
  const columns = chosen.map(({ index, limb }): ForceColumn => {
    const hint = hints[index]!;
    const name = plateName(index, hints);
    const base = { index, name, isNamed: hint.written !== "", limb };
    const headerUnit = forceUnitOf(hint.unit);
    const unit = headerUnit ?? statedUnit;
    if (isVoltage(hint.unit)) findings.push(voltage(name, hint.unit));
    else if (headerUnit !== undefined && statedUnit !== undefined && headerUnit !== statedUnit) {
      findings.push(unitContradicts(name, hint.unit, statedUnit));
    } else if (unit === undefined) silent.push(hint.unit === "" ? name : `${name} (${hint.unit})`);
    const unitFrom = headerUnit !== undefined ? "header" : statedUnit !== undefined ? "stated" : "unknown";
    const force = (table.columns[index] ?? new Float64Array(0)).slice(span.start, span.end);
    if (unit === undefined || isVoltage(hint.unit)) return { ...base, unitFrom: "unknown", force };
    const factor = newtonsPerUnit[unit];
    if (factor !== 1) for (let row = 0; row < force.length; row++) force[row] = force[row]! * factor;
    if (pointsDown(force, settings)) {
      for (let row = 0; row < force.length; row++) force[row] = -force[row]!;
      turned.push(name);
    }
    return { ...base, unit, unitFrom, force };
  });
  if (silent.length > 0) findings.push(unitNotStated(silent));
  if (turned.length > 0) findings.push(signTurned(turned));
  return { columns, findings };
}

/** The column's own name, made unique by its position; "column 3" where the file names nothing. */
function plateName(index: number, hints: readonly ColumnHint[]): string {
  const { bare, written } = hints[index]!;
  const name = bare === "" ? written : bare;
  if (name === "") return `column ${index + 1}`;
  const isUnique = hints.filter((hint) => (hint.bare === "" ? hint.written : hint.bare) === name).length === 1;
  return isUnique ? name : `${name} (column ${index + 1})`;
}

/** True when the loaded samples of a column are negative; an empty plate with its noise has no sign. */
function pointsDown(force: Float64Array, settings: Settings): boolean {
  const load = settings.signLoadFraction * settings.bodyMassMinimumKg * settings.gravity;
  let up = 0;
  let down = 0;
  for (const value of force) {
    if (value > load) up++;
    else if (value < -load) down++;
  }
  // A hundredth of the samples keeps single spikes from turning an empty plate.
  return down > up + force.length / 100;
}

function voltage(name: string, unit: string): Finding {
  return finding(
    "unit-not-stated",
    "refusal",
    `Column ${name} is a voltage (${unit}); without its scale it says nothing about force.`,
    "Export the recording in newtons.",
    { where: `column ${name}` },
  );
}

function unitContradicts(name: string, headerUnit: string, stated: ForceUnit): Finding {
  return finding(
    "unit-contradicts",
    "refusal",
    `Column ${name} says ${headerUnit}, but ${stated} was stated.`,
    "Leave the stated unit out (--unit), or correct the file's header.",
    { where: `column ${name}` },
  );
}

function unitNotStated(names: readonly string[]): Finding {
  return finding(
    "unit-not-stated",
    "refusal",
    `The file does not say in which unit of force ${names.length === 1 ? "its column is" : "its columns are"}: ${names.join(", ")}.`,
    "State the unit: N, kN, kgf or lbf (--unit N).",
  );
}

function signTurned(names: readonly string[]): Finding {
  return finding(
    "sign-turned",
    "note",
    `${names.length === 1 ? "Column" : "Columns"} ${names.join(" and ")} counted downward force as positive and ${names.length === 1 ? "was" : "were"} turned.`,
    "Check that standing still shows body weight upwards.",
  );
}
