import { type Finding, proseFinding } from "../ground/finding.ts";
import type { BodyMass } from "../recording/body-mass.ts";
import { sourceText } from "../recording/statement-source.ts";
import type { Settings } from "../settings/settings.ts";

/** What is said about the athlete's mass outside the force. */
interface SaidMasses {
  readonly enteredMassKg?: number;
  readonly header?: BodyMass;
}

/** Says where a trial's own weighing disagrees with an entered mass or the header's. */
export function compareSaidMasses(
  { newtons }: { readonly newtons: number },
  { enteredMassKg, header }: SaidMasses,
  settings: Settings,
): readonly Finding[] {
  const massKg = newtons / settings.gravity;
  const findings: Finding[] = [];
  if (enteredMassKg !== undefined && Math.abs(massKg - enteredMassKg) > settings.weightToleranceEnteredKg) {
    findings.push(
      proseFinding(
        "weight-differs",
        "warning",
        `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the entered mass is ${enteredMassKg.toFixed(1)} kg.`,
        "Check the entered mass, the force unit and the plate's zero.",
      ),
    );
  }
  if (header !== undefined && Math.abs(massKg - header.massKg) > settings.weightToleranceEnteredKg) {
    findings.push(
      proseFinding(
        "weight-differs",
        "warning",
        `This trial weighs the athlete at ${massKg.toFixed(1)} kg; the header says ${header.massKg.toFixed(1)} kg (${sourceText(header.source)}).`,
        "Check that the file is this athlete's, the force unit and the plate's zero.",
      ),
    );
  }
  return findings;
}
