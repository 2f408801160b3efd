import { type Finding, finding } from "../ground/finding.ts";
import type { Side } from "../ground/limb.ts";
import type { MeasureId } from "../ground/measures/catalogue.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import { hasTrait } from "../ground/test-traits.ts";
import type { Settings } from "../settings/settings.ts";
import type { Measure } from "./measure.ts";
import type { MeasureContext } from "./raw-measure.ts";

/** What was stated about a drop. */
export interface DropStatement {
  /** Height of the box, metres. */
  readonly dropHeightMetres?: number;
  /** The leg that steps off the box first. */
  readonly leadingLeg?: Side;
}

/** What is to be said about a drop jump or a drop landing (METHODS §6). */
export function dropFindings(
  context: MeasureContext,
  stated: DropStatement,
  measures: readonly Measure[],
  settings: Settings,
): readonly Finding[] {
  const { test } = context.jump;
  if (!startsFromBox(test)) return [];
  const value = (id: MeasureId): number | undefined => measures.find((measure) => measure.id === id)?.value;
  const findings: Finding[] = [];
  findings.push(...heightFindings(stated.dropHeightMetres, value("dropHeightEffective"), settings));
  const contactTime = value("contactTime");
  if (context.limb === "both" && contactTime !== undefined && contactTime > settings.slowContactSeconds) {
    findings.push(finding("slow-contact", "note", { seconds: contactTime, limitSeconds: settings.slowContactSeconds }));
  }
  if (hasTrait(test, "contact") && context.limbs.length === 2 && stated.leadingLeg === undefined) {
    findings.push(
      finding("leading-leg-missing", "warning", {}, { answers: [{ leadingLeg: "left" }, { leadingLeg: "right" }] }),
    );
  }
  return findings;
}

function heightFindings(
  stated: number | undefined,
  effective: number | undefined,
  settings: Settings,
): readonly Finding[] {
  if (stated === undefined) {
    return [finding("drop-height-not-stated", "note", {}, { answers: [{ asks: "dropHeightMetres" }] })];
  }
  if (effective === undefined) return [];
  const off = effective / stated - 1;
  if (Math.abs(off) <= settings.dropHeightTolerance) return [];
  return [finding("drop-height-off", "warning", { fallenMetres: effective, statedMetres: stated })];
}
