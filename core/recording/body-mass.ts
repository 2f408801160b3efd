import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { HeaderHint } from "./header-hint.ts";
import { hintSource } from "./stated-rate.ts";

/** A body mass that turns body weights into newtons, and where it stands. */
export interface BodyMass {
  readonly massKg: number;
  /** "stated", "line 4: Mass: 69.4 kg". */
  readonly source: string;
}

/** The mass as a person stated it, else as the header does with its unit. */
export function findMass(statedKg: number | undefined, hints: readonly HeaderHint[]): BodyMass | undefined {
  if (statedKg !== undefined) return { massKg: statedKg, source: "stated" };
  const hint = headerMass(hints);
  return hint === undefined ? undefined : { massKg: hint.massKg, source: hint.source };
}

/** Says that the header's mass is another than the stated one, or none a person has. */
export function massContradiction(
  mass: BodyMass | undefined,
  hints: readonly HeaderHint[],
  settings: Settings,
): readonly Finding[] {
  const header = headerMass(hints);
  if (mass === undefined || header === undefined) return [];
  if (mass.massKg < settings.bodyMassMinimumKg || mass.massKg > settings.bodyMassMaximumKg) {
    return [
      proseFinding(
        "weight-implausible",
        "refusal",
        `A mass of ${mass.massKg} kg (${mass.source}) is outside ${settings.bodyMassMinimumKg} to ${settings.bodyMassMaximumKg} kg.`,
        "State the body mass (--mass 70).",
      ),
    ];
  }
  if (Math.abs(mass.massKg - header.massKg) <= settings.weightToleranceEnteredKg) return [];
  return [
    proseFinding(
      "weight-differs",
      "warning",
      `The header says ${header.massKg} kg (${header.source}), but ${mass.massKg} kg was stated and used.`,
      "Check the mass: every force of this file hangs on it.",
    ),
  ];
}

/** The first mass that the header gives with its unit. */
export function headerMass(hints: readonly HeaderHint[]): BodyMass | undefined {
  const found = hints.flatMap((hint) =>
    hint.kind === "mass" && typeof hint.value === "number" ? [{ massKg: hint.value, source: hintSource(hint) }] : [],
  );
  return found[0];
}
