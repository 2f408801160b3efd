import { type Finding, finding } from "../ground/finding.ts";
import type { BodyMass } from "../recording/body-mass.ts";
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
    findings.push(finding("weight-differs/entered", "warning", { massKg, enteredKg: enteredMassKg }));
  }
  if (header !== undefined && Math.abs(massKg - header.massKg) > settings.weightToleranceEnteredKg) {
    const { massKg: headerKg, source } = header;
    findings.push(finding("weight-differs/header", "warning", { massKg, headerKg, source }));
  }
  return findings;
}
