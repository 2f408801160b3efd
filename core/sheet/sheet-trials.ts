import { startsFromBox, type TestKind, testKinds } from "../ground/test-kind.ts";
import type { TrialResult } from "../result/trial-result.ts";
import { boxHeights, boxHeightText, sameBoxHeight } from "../sides/box-height.ts";
import { english } from "../words/english.ts";

/** The trials of one test, one number of legs and, off a box, one box height, in the order of the session. */
export interface TrialGroup {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  /** Metres; absent where nobody stated it or no box was used. */
  readonly dropHeightMetres?: number;
  readonly trials: readonly TrialResult[];
}

/** Trials by test, two legs before one, the lower box first; trials whose test or limb is not known are in no group. */
export function trialGroups(trials: readonly TrialResult[]): readonly TrialGroup[] {
  return testKinds.flatMap((test) =>
    (["both", "single"] as const).flatMap((legs) => {
      const members = trials.filter(
        (trial) => trial.test === test && trial.limb !== undefined && (trial.limb === "both") === (legs === "both"),
      );
      if (!startsFromBox(test)) return members.length === 0 ? [] : [{ test, legs, trials: members }];
      return boxHeights(members).map((height) => ({
        test,
        legs,
        ...(height === undefined ? {} : { dropHeightMetres: height }),
        trials: members.filter((trial) => sameBoxHeight(trial.dropHeightMetres, height)),
      }));
    }),
  );
}

/** The name of a group: "countermovement jump, two legs", "drop jump, single-leg, from 0.20 m". */
export function groupName(group: Omit<TrialGroup, "trials">): string {
  return `${english.tests.label(group.test)}, ${groupDetail(group)}`;
}

/** The name of a group without its test: "two legs", "single-leg, from 0.20 m". */
export function groupDetail({ test, legs, dropHeightMetres }: Omit<TrialGroup, "trials">): string {
  const box = !startsFromBox(test)
    ? ""
    : dropHeightMetres === undefined
      ? ", box height not stated"
      : `, from ${boxHeightText(dropHeightMetres)}`;
  return `${legs === "both" ? "two legs" : "single-leg"}${box}`;
}

/** The file of a trial as its session names it, with the trial's number where the file holds several. */
export function trialName(trial: TrialResult, trials: readonly TrialResult[]): string {
  const several = trials.filter((each) => each.file === trial.file).length > 1;
  return several ? `${trial.file}, trial ${trial.trial}` : trial.file;
}
