import { type Finding, finding } from "../ground/finding.ts";
import type { StatementSource } from "../ground/findings/file-parts.ts";
import type { Settings } from "../settings/settings.ts";
import type { HeaderHint } from "./header-hint.ts";
import { lineOf } from "./statement-source.ts";

/** A body mass that turns body weights into newtons, and where it stands. */
export interface BodyMass {
  readonly massKg: number;
  readonly source: StatementSource;
}

/** The mass as a person stated it, else as the header does with its unit. */
export function findMass(statedKg: number | undefined, hints: readonly HeaderHint[]): BodyMass | undefined {
  if (statedKg !== undefined) return { massKg: statedKg, source: { from: "person" } };
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
    const { bodyMassMinimumKg: leastKg, bodyMassMaximumKg: mostKg } = settings;
    return [
      finding("weight-implausible/mass", "refusal", { ...mass, leastKg, mostKg }, { answers: [{ asks: "massKg" }] }),
    ];
  }
  if (Math.abs(mass.massKg - header.massKg) <= settings.weightToleranceEnteredKg) return [];
  return [
    finding("weight-differs/header", "warning", {
      headerKg: header.massKg,
      source: header.source,
      massKg: mass.massKg,
    }),
  ];
}

/** The first mass that the header gives with its unit. */
export function headerMass(hints: readonly HeaderHint[]): BodyMass | undefined {
  const found = hints.flatMap((hint) =>
    hint.kind === "mass" && typeof hint.value === "number"
      ? [{ massKg: hint.value, source: { from: "line", ...lineOf(hint) } as const }]
      : [],
  );
  return found[0];
}
