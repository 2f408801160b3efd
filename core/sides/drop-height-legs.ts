import { type Finding, proseFinding } from "../ground/finding.ts";
import type { Side } from "../ground/limb.ts";
import { startsFromBox, type TestKind, testKinds } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { english } from "../words/english.ts";
import { boxHeights, boxHeightText, sameBoxHeight } from "./box-height.ts";
import type { ComparableTrial } from "./comparable-trial.ts";
import { mean } from "./trial-statistic.ts";

/** Single-leg trials of one test from one box in which the legs fell from heights too different to compare. */
export interface DropHeightMismatch {
  readonly test: TestKind;
  /** The box they share; absent where nobody stated it. */
  readonly dropHeightMetres?: number;
  /** Mean effective drop heights, metres. */
  readonly left: number;
  readonly right: number;
}

function meanEffectiveHeight(trials: readonly ComparableTrial[], side: Side): number | undefined {
  const heights = trials
    .filter((trial) => trial.limb === side)
    .flatMap((trial) => trial.measures.filter((each) => each.id === "dropHeightEffective" && each.side === side));
  return heights.length === 0 ? undefined : mean(heights.map((each) => each.value));
}

/**
 * Where the legs did not fall alike: the means of the effective drop height of left and right single-leg trials differ
 * by more than `dropHeightLegsTolerance` of the larger (METHODS §6). A leg let down more gently is asked for less, so
 * no index between such trials means what it says. Excluded trials do not count.
 */
export function dropHeightMismatches(
  trials: readonly ComparableTrial[],
  settings: Settings,
): readonly DropHeightMismatch[] {
  return testKinds.filter(startsFromBox).flatMap((test) => {
    const single = trials.filter((trial) => trial.test === test && trial.limb !== "both" && !trial.excluded);
    return boxHeights(single).flatMap((height) => {
      const ofBox = single.filter((trial) => sameBoxHeight(trial.dropHeightMetres, height));
      const left = meanEffectiveHeight(ofBox, "left");
      const right = meanEffectiveHeight(ofBox, "right");
      if (left === undefined || right === undefined) return [];
      if (!(Math.abs(left - right) > settings.dropHeightLegsTolerance * Math.max(left, right))) return [];
      return [{ test, ...(height === undefined ? {} : { dropHeightMetres: height }), left, right }];
    });
  });
}

/** A mismatch in words, without a full stop: "the left leg fell from 0.150 m, the right from 0.180 m (17 % less)". */
export function dropHeightMismatchText({ left, right }: DropHeightMismatch): string {
  const less = 100 * (1 - Math.min(left, right) / Math.max(left, right));
  const lower = left < right ? "left" : "right";
  return `the left leg fell from ${left.toFixed(3)}\u00a0m and the right from ${right.toFixed(3)}\u00a0m, the ${lower} from ${less.toFixed(0)}\u00a0% less`;
}

/** One session finding for each test and box from which the legs did not fall alike. */
export function dropHeightFindings(trials: readonly ComparableTrial[], settings: Settings): readonly Finding[] {
  return dropHeightMismatches(trials, settings).map((mismatch) => {
    const box = mismatch.dropHeightMetres === undefined ? "" : ` from ${boxHeightText(mismatch.dropHeightMetres)}`;
    return proseFinding(
      "drop-height-legs-differ",
      "warning",
      `In single-leg ${english.tests.label(mismatch.test)}s${box} ${dropHeightMismatchText(mismatch)}: the legs are not comparable.`,
      "Step off without jumping up or lowering the body first, alike on both legs, or exclude the trials that were not.",
      { where: `single-leg ${english.tests.label(mismatch.test)}s` },
    );
  });
}
