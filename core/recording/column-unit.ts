import type { Answer } from "../ground/answer.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { ColumnHint } from "./column-hint.ts";
import { type ForceColumnUnit, forceUnitOf, forceUnits, isVoltage } from "./force-units.ts";
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
    return { ...none, findings: [headerContradicts(name, hint.unit, own, header)] };
  }
  if (written !== undefined && stated !== undefined && written !== stated) {
    const about = { place: { at: "columns", names: [name] }, answers: unitAnswers([written]) } as const;
    const contradiction =
      own === undefined && header !== undefined
        ? finding("unit-contradicts/line", "refusal", { unit: written, line: header.line, stated }, about)
        : finding("unit-contradicts/column", "refusal", { name, unit: hint.unit, stated }, about);
    return { ...none, findings: [contradiction] };
  }
  if (written !== undefined) return { unit: written, unitFrom: "header", isSilent: false, findings: [] };
  if (stated !== undefined) return { unit: stated, unitFrom: "stated", isSilent: false, findings: [] };
  return { ...none, isSilent: true, findings: [] };
}

function voltage(name: string, unit: string): Finding {
  return finding("unit-not-stated/voltage", "refusal", { name, unit }, { place: { at: "columns", names: [name] } });
}

function headerContradicts(
  name: string,
  unit: string,
  own: ForceColumnUnit,
  header: NonNullable<UnitStatements["header"]>,
): Finding {
  return finding(
    "unit-contradicts/column-and-line",
    "refusal",
    { name, unit, lineUnit: header.unit, line: header.line },
    { place: { at: "columns", names: [name] }, answers: unitAnswers([own, header.unit]) },
  );
}

/** Those of the units that can be stated; where none can, the person is asked. */
function unitAnswers(units: readonly ForceColumnUnit[]): readonly Answer[] {
  const stated = forceUnits.filter((unit) => units.includes(unit)).map((unit) => ({ unit }));
  return stated.length === 0 ? [{ asks: "unit" }] : stated;
}
