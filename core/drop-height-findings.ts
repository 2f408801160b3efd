import { type Finding, finding } from "./finding.ts";
import type { Side } from "./limb.ts";
import type { TrialResult } from "./result.ts";
import type { Settings } from "./settings.ts";

/**
 * Says where single-leg drop jumps of the two legs fell from different heights: that breaks the symmetry of what
 * follows (METHODS §6). Each box height is looked at by itself.
 */
export function dropHeightFindings(trials: readonly TrialResult[], settings: Settings): readonly Finding[] {
  const jumps = trials.filter((trial) => trial.test === "dropJump" && trial.excluded === undefined);
  const boxes = [...new Set(jumps.map((trial) => trial.dropHeightMetres))];
  return boxes.flatMap((box) => {
    const fromBox = jumps.filter((trial) => trial.dropHeightMetres === box);
    const left = meanDropHeight(fromBox, "left");
    const right = meanDropHeight(fromBox, "right");
    if (left === undefined || right === undefined) return [];
    if (Math.abs(left - right) <= settings.dropHeightLegsTolerance * Math.max(left, right)) return [];
    return [
      finding(
        "drop-height-legs-differ",
        "warning",
        `The left leg fell ${(100 * left).toFixed(1)} cm and the right ${(100 * right).toFixed(1)} cm in single-leg drop jumps${box === undefined ? "" : ` from ${(100 * box).toFixed(0)} cm`}: their comparison is in doubt.`,
        "Have the athlete step off in the same way on both legs, and repeat the jumps that differ.",
      ),
    ];
  });
}

function meanDropHeight(trials: readonly TrialResult[], side: Side): number | undefined {
  const heights = trials
    .filter((trial) => trial.limb === side)
    .flatMap((trial) => trial.measures.find((measure) => measure.id === "dropHeightEffective")?.value ?? []);
  return heights.length === 0 ? undefined : heights.reduce((sum, each) => sum + each, 0) / heights.length;
}
