import type { TrialResult } from "../result.ts";
import { type TestKind, testKinds, testLabel } from "../test-kind.ts";

/** The trials of one test and one number of legs, in the order of the session. */
export interface TrialGroup {
  readonly test: TestKind;
  readonly legs: "both" | "single";
  readonly trials: readonly TrialResult[];
}

/** Trials by test, two legs before one; trials whose test or limb is not known are in no group. */
export function trialGroups(trials: readonly TrialResult[]): readonly TrialGroup[] {
  return testKinds.flatMap((test) =>
    (["both", "single"] as const).flatMap((legs) => {
      const members = trials.filter(
        (trial) => trial.test === test && trial.limb !== undefined && (trial.limb === "both") === (legs === "both"),
      );
      return members.length === 0 ? [] : [{ test, legs, trials: members }];
    }),
  );
}

/** The name of a group: "countermovement jump, two legs". */
export function groupName(group: Pick<TrialGroup, "test" | "legs">): string {
  return `${testLabel(group.test)}, ${group.legs === "both" ? "two legs" : "single-leg"}`;
}

/** True for trials whose measures enter comparisons: analysed at least in part and not excluded by a person. */
export function isUsed(trial: TrialResult): boolean {
  return trial.status !== "refused" && trial.excluded === undefined;
}

/** The file of a trial as its session names it, with the trial's number where the file holds several. */
export function trialName(trial: TrialResult, trials: readonly TrialResult[]): string {
  const several = trials.filter((each) => each.file === trial.file).length > 1;
  return several ? `${trial.file}, trial ${trial.trial}` : trial.file;
}
