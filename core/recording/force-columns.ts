import type { Table } from "../bytes/table.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { BodyMass } from "./body-mass.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnRoles } from "./column-roles.ts";
import { decideUnit, type UnitDecision } from "./column-unit.ts";
import type { ForceColumn } from "./force-column.ts";
import { forceUnits, needsMass, newtonsIn } from "./force-units.ts";
import { unitsThatFit } from "./standing-load.ts";
import type { UnitStatements } from "./unit-statements.ts";

/** The forces in newtons in the order of the file, with what is doubtful about unit and sign. */
export function readForces(
  table: Table,
  hints: readonly ColumnHint[],
  roles: ColumnRoles,
  span: { readonly start: number; readonly end: number },
  units: UnitStatements,
  settings: Settings,
): { readonly columns: readonly ForceColumn[]; readonly findings: readonly Finding[] } {
  const chosen = (
    [
      [roles.left, "left"],
      [roles.right, "right"],
      [roles.total, "both"],
    ] as const
  )
    .flatMap(([indices, limb]) => (indices.length === 0 ? [] : [{ indices: [...indices].sort(ascending), limb }]))
    .sort((one, other) => one.indices[0]! - other.indices[0]!);
  const findings: Finding[] = [];
  const turned: string[] = [];
  const silent: { readonly name: string; readonly unit: string }[] = [];
  let usesMass = false;
  const columns = chosen.map(({ indices, limb }): ForceColumn => {
    const names = indices.map((index) => plateName(index, hints));
    const isNamed = indices.every((index) => hints[index]!.written !== "");
    const base = { indices, name: names.join(" + "), isNamed, limb };
    const parts = indices.map((index, position) => {
      const raw = (table.columns[index] ?? new Float64Array(0)).slice(span.start, span.end);
      const decision = decideUnit(hints[index]!, names[position]!, units);
      findings.push(...decision.findings);
      if (decision.isSilent) silent.push({ name: names[position]!, unit: hints[index]!.unit });
      usesMass ||= decision.unit !== undefined && needsMass(decision.unit);
      const factor = decision.unit && newtonsIn(decision.unit, units.mass?.massKg, settings.gravity);
      const isTurned = factor !== undefined && convert(raw, factor, settings);
      if (isTurned) turned.push(names[position]!);
      return { decision, force: raw };
    });
    const force = parts[0]!.force;
    for (const part of parts.slice(1))
      for (let row = 0; row < force.length; row++) force[row] = force[row]! + part.force[row]!;
    if (indices.length > 1) findings.push(platesSummed(limb, names));
    return { ...base, ...unitOf(parts.map((part) => part.decision)), force };
  });
  if (silent.length > 0) findings.push(unitNotStated(silent, columns, settings));
  if (usesMass) findings.push(massFinding(units.mass));
  if (turned.length > 0) findings.push(signTurned(turned));
  return { columns, findings };
}

function ascending(one: number, other: number): number {
  return one - other;
}

/** The unit of a force; of a sum the one its columns share. */
function unitOf(decisions: readonly UnitDecision[]): Pick<ForceColumn, "unit" | "unitFrom"> {
  const [first] = decisions;
  if (first?.unit === undefined || decisions.some((each) => each.unit === undefined)) return { unitFrom: "unknown" };
  return { unit: first.unit, unitFrom: first.unitFrom };
}

/** Turns values into newtons upward in place; true where they pointed down. */
function convert(force: Float64Array, factor: number, settings: Settings): boolean {
  const rows = force.length;
  if (factor !== 1) for (let row = 0; row < rows; row++) force[row] = force[row]! * factor;
  if (!pointsDown(force, settings)) return false;
  for (let row = 0; row < rows; row++) force[row] = -force[row]!;
  return true;
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
  const rows = force.length;
  for (let row = 0; row < rows; row++) {
    const value = force[row]!;
    if (value > load) up++;
    else if (value < -load) down++;
  }
  // A hundredth of the samples keeps single spikes from turning an empty plate.
  return down > up + rows / 100;
}

function platesSummed(limb: Limb, names: readonly string[]): Finding {
  return finding("plates-summed", "note", { limb, names }, { place: { at: "columns", names } });
}

function massFinding(mass: BodyMass | undefined): Finding {
  if (mass === undefined) return finding("mass-missing", "refusal", {}, { answers: [{ asks: "massKg" }] });
  return finding("unit-from-mass", "note", mass);
}

/** Asks for the unit; where the load of standing is seen, the units that make it a person's come first. */
function unitNotStated(
  silent: readonly { readonly name: string; readonly unit: string }[],
  columns: readonly ForceColumn[],
  settings: Settings,
): Finding {
  const likely = unitsThatFit(columns, settings);
  const answers = (likely.length > 0 ? likely : forceUnits).map((unit) => ({ unit }));
  return finding("unit-not-stated/columns", "refusal", { columns: silent }, { answers });
}

function signTurned(names: readonly string[]): Finding {
  return finding("sign-turned/columns", "note", { names });
}
