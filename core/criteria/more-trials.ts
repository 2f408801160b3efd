import type { Limb } from "../ground/limb.ts";
import { startsFromBox } from "../ground/test-kind.ts";
import type { Settings } from "../settings/settings.ts";
import { sameBoxHeight } from "../sides/box-height.ts";
import type { AskedTrials, CriteriaInput } from "./criteria-input.ts";

const words = ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten"];

/**
 * How many more trials may be asked for on each of several legs: as many as the session's protocol still allows on the
 * one with fewest left; without a protocol, as many as the settings allow a side beyond those made.
 */
export function trialsAllowed(
  asked: AskedTrials,
  limbs: readonly Limb[],
  { trials, trialsAllowed: allowed }: Pick<CriteriaInput, "trials" | "trialsAllowed">,
  settings: Settings,
): number {
  const made = (limb: Limb) =>
    trials.filter(
      (trial) =>
        trial.test === asked.test &&
        trial.limb === limb &&
        (!startsFromBox(asked.test) || sameBoxHeight(trial.dropHeightMetres, asked.dropHeightMetres)),
    ).length;
  return Math.min(...limbs.map((limb) => allowed?.(asked, limb) ?? settings.maximumTrialsPerSide - made(limb)));
}

/**
 * Whether more trials today could settle an undecided status. They are never asked for lightly: only as many as the
 * settings allow to suggest, within what is allowed, and only if they would probably settle it.
 *
 * @param allowed how many more trials may be asked for (`trialsAllowed`)
 * @param what who would have to jump: "a side", "on two legs", "of the left leg"
 * @param settles whether that many more trials of the present spread would decide the status
 */
export function moreTrialsSentence(
  allowed: number,
  what: string,
  settles: (extraTrials: number) => boolean,
  settings: Settings,
): string {
  const most = Math.min(settings.suggestedTrialsPerSide, allowed);
  for (let extra = 1; extra <= most; extra += 1) {
    if (!settles(extra)) continue;
    const count = words[extra] ?? String(extra);
    const capital = count.charAt(0).toUpperCase() + count.slice(1);
    return `${capital} more ${extra === 1 ? "trial" : "trials"} ${what} would probably settle this.`;
  }
  return "More trials today cannot settle this.";
}
