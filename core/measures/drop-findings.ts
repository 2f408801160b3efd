import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Side } from "../ground/limb.ts";
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
  const value = (id: string): number | undefined => measures.find((measure) => measure.id === id)?.value;
  const findings: Finding[] = [];
  findings.push(...heightFindings(stated.dropHeightMetres, value("dropHeightEffective"), settings));
  const contactTime = value("contactTime");
  if (context.limb === "both" && contactTime !== undefined && contactTime > settings.slowContactSeconds) {
    findings.push(
      proseFinding(
        "slow-contact",
        "note",
        `The contact lasts ${contactTime.toFixed(3)} s, above ${settings.slowContactSeconds.toFixed(3)} s: slow stretch-shortening.`,
        "Compare it with trials of the same kind only.",
      ),
    );
  }
  if (hasTrait(test, "contact") && context.limbs.length === 2 && stated.leadingLeg === undefined) {
    findings.push(
      proseFinding(
        "leading-leg-missing",
        "warning",
        "Nothing says which leg stepped off the box first; it lands first and harder, so left and right cannot be compared.",
        "State the leading leg (--leading-leg, or leadingLeg in session.json), and lead with each leg in turn.",
      ),
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
    return [
      proseFinding(
        "drop-height-not-stated",
        "note",
        "Nothing says how high the box is, so the effective drop height is held against nothing.",
        "State it (--drop-height, or dropHeightMetres in session.json).",
      ),
    ];
  }
  if (effective === undefined) return [];
  const off = effective / stated - 1;
  if (Math.abs(off) <= settings.dropHeightTolerance) return [];
  return [
    proseFinding(
      "drop-height-off",
      "warning",
      `The athlete fell ${(100 * effective).toFixed(1)} cm from a box of ${(100 * stated).toFixed(1)} cm: ${Math.abs(100 * off).toFixed(0)} % ${off < 0 ? "less" : "more"}.`,
      off < 0
        ? "Have the athlete step off without lowering the body first, and check the stated box height."
        : "Have the athlete step off without jumping up first, and check the stated box height.",
    ),
  ];
}
