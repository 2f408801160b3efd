import type { Table } from "../bytes/table.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Limb } from "../ground/limb.ts";
import type { Settings } from "../settings/settings.ts";
import type { BodyMass } from "./body-mass.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ColumnRoles } from "./column-roles.ts";
import { decideUnit, type UnitDecision } from "./column-unit.ts";
import { type ForceColumnUnit, needsMass, newtonsIn } from "./force-units.ts";
import type { UnitStatements } from "./unit-statements.ts";

/** One force, converted: a column, or the sum of the columns of one foot's plates. */
export interface ForceColumn {
  /** From 0, in order of the file; the first is the force's place. */
  readonly indices: readonly number[];
  /** The file's own name, or "column 3". */
  readonly name: string;
  /** False where the file names nothing. */
  readonly isNamed: boolean;
  readonly limb: Limb;
  /** Absent where no unit is known; the values are then as in the file. */
  readonly unit?: ForceColumnUnit;
  readonly unitFrom: "header" | "stated" | "unknown";
  /** Newtons, upward positive, one value a usable row. */
  readonly force: Float64Array;
}

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
  const silent: string[] = [];
  let usesMass = false;
  const columns = chosen.map(({ indices, limb }): ForceColumn => {
    const names = indices.map((index) => plateName(index, hints));
    const isNamed = indices.every((index) => hints[index]!.written !== "");
    const base = { indices, name: names.join(" + "), isNamed, limb };
    const parts = indices.map((index, position) => {
      const raw = (table.columns[index] ?? new Float64Array(0)).slice(span.start, span.end);
      const decision = decideUnit(hints[index]!, names[position]!, units);
      findings.push(...decision.findings);
      if (decision.isSilent)
        silent.push(hints[index]!.unit === "" ? names[position]! : `${names[position]} (${hints[index]!.unit})`);
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
  if (silent.length > 0) findings.push(unitNotStated(silent));
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
  const whose = limb === "both" ? "The plates" : `The plates under the ${limb} foot`;
  return proseFinding(
    "plates-summed",
    "note",
    `${whose} were added: ${names.join(" + ")}.`,
    "Check that these columns are plates under one foot, and not several readings of one plate.",
    { where: `column ${names.join(" + ")}` },
  );
}

function massFinding(mass: BodyMass | undefined): Finding {
  if (mass === undefined) {
    return proseFinding(
      "mass-missing",
      "refusal",
      "The forces are given in body weights or per kilogram, which are no newtons without the athlete's mass.",
      "State the body mass (--mass 70).",
    );
  }
  return proseFinding(
    "unit-from-mass",
    "note",
    `Body weights were turned into newtons with a mass of ${mass.massKg} kg (${mass.source}); body mass measured from them only repeats it.`,
    "Check the mass, or export the recording in newtons.",
  );
}

function unitNotStated(names: readonly string[]): Finding {
  return proseFinding(
    "unit-not-stated",
    "refusal",
    `The file does not say in which unit of force ${names.length === 1 ? "its column is" : "its columns are"}: ${names.join(", ")}.`,
    names.some((name) => /\(kgs?\)$/i.test(name))
      ? "State the unit (--unit kgf where kilograms on the plate are meant, else N, kN or lbf)."
      : "State the unit: N, kN, kgf or lbf (--unit N).",
  );
}

function signTurned(names: readonly string[]): Finding {
  return proseFinding(
    "sign-turned",
    "note",
    `${names.length === 1 ? "Column" : "Columns"} ${names.join(" and ")} counted downward force as positive and ${names.length === 1 ? "was" : "were"} turned.`,
    "Check that standing still shows body weight upwards.",
  );
}
