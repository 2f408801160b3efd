import { type Finding, proseFinding } from "../ground/finding.ts";
import type { ColumnHint } from "./column-hint.ts";
import type { ForceUnit } from "./force-units.ts";
import { type ForceColumnUnit, forceUnitOf, isVoltage } from "./force-units.ts";
import type { UnitStatements } from "./unit-statements.ts";

/** The unit of one force column. */
export interface UnitDecision {
  /** Absent where none is known or the known ones contradict each other. */
  readonly unit?: ForceColumnUnit;
  readonly unitFrom: "header" | "stated" | "unknown";
  /** True where nobody says anything: it is asked once for all columns. */
  readonly isSilent: boolean;
  readonly findings: readonly Finding[];
}

/** The unit as the column says it, else the header's lines, else a person; a contradiction is refused. */
export function decideUnit(
  hint: ColumnHint,
  name: string,
  { stated, header, overrules }: UnitStatements,
): UnitDecision {
  const none = { unitFrom: "unknown", isSilent: false } as const;
  if (isVoltage(hint.unit)) return { ...none, findings: [voltage(name, hint.unit)] };
  const own = forceUnitOf(hint.unit);
  if (stated !== undefined && overrules === true) {
    return { unit: stated, unitFrom: "stated", isSilent: false, findings: [] };
  }
  const written = own ?? (hint.unit === "" ? header?.unit : undefined);
  if (own !== undefined && header !== undefined && header.unit !== own && stated === undefined) {
    return { ...none, findings: [headerContradicts(name, hint.unit, header)] };
  }
  if (written !== undefined && stated !== undefined && written !== stated) {
    const source =
      own === undefined ? `The header says ${written} (${header?.source})` : `Column ${name} says ${hint.unit}`;
    return { ...none, findings: [unitContradicts(name, source, stated)] };
  }
  if (written !== undefined) return { unit: written, unitFrom: "header", isSilent: false, findings: [] };
  if (stated !== undefined) return { unit: stated, unitFrom: "stated", isSilent: false, findings: [] };
  return { ...none, isSilent: true, findings: [] };
}

function voltage(name: string, unit: string): Finding {
  return proseFinding(
    "unit-not-stated",
    "refusal",
    `Column ${name} is a voltage (${unit}); without its scale it says nothing about force.`,
    "Export the recording in newtons.",
    { where: `column ${name}` },
  );
}

function unitContradicts(name: string, source: string, stated: ForceUnit): Finding {
  return proseFinding(
    "unit-contradicts",
    "refusal",
    `${source}, but ${stated} was stated.`,
    "Leave the stated unit out (--unit), or correct the file's header.",
    { where: `column ${name}` },
  );
}

function headerContradicts(
  name: string,
  unit: string,
  header: { readonly unit: ForceColumnUnit; readonly source: string },
): Finding {
  return proseFinding(
    "unit-contradicts",
    "refusal",
    `Column ${name} says ${unit}, but the header says ${header.unit} (${header.source}).`,
    "State the unit: N, kN, kgf or lbf (--unit N).",
    { where: `column ${name}` },
  );
}
