import type { TrialDraft } from "./draft-trials.ts";
import type { SessionWeight } from "./events/session-weight.ts";
import type { WeightEstimate } from "./events/weigh.ts";
import type { WeightUsed } from "./result.ts";
import type { Settings } from "./settings.ts";

const oneWindow = "quiet standing before the jump";
const twoWindows = "quiet standing before and after the jump";

/**
 * The weight a trial is analysed with (METHODS §2): the session's for single-leg trials, otherwise the better of the
 * trial's own two estimates, and an entered mass where nobody stood still. The estimate that is not used is kept
 * beside it.
 * @returns undefined when weight is unknown.
 */
export function chooseWeight(
  draft: TrialDraft,
  session: SessionWeight | undefined,
  enteredMassKg: number | undefined,
  settings: Settings,
): WeightUsed | undefined {
  const { weighing, balance, limb } = draft;
  if (weighing === undefined) {
    if (enteredMassKg === undefined) return undefined;
    const { gravity, enteredMassUncertaintyKg } = settings;
    return {
      newtons: enteredMassKg * gravity,
      uncertainty: enteredMassUncertaintyKg * gravity,
      from: "entered mass",
    };
  }
  const { window } = weighing;
  const used = trialWeight(draft);
  const from = used === balance ? twoWindows : oneWindow;
  if (limb !== "both" && session !== undefined) {
    const { newtons, uncertainty } = session;
    return { newtons, uncertainty, from: "pooled over the session", window, other: { ...plain(used), from } };
  }
  const other = used === balance ? weighing : balance;
  return {
    ...plain(used),
    from,
    window,
    ...(other === undefined ? {} : { other: { ...plain(other), from: used === balance ? oneWindow : twoWindows } }),
  };
}

/** The better of a trial's own estimates; at a tie the momentum balance. */
export function trialWeight(draft: Pick<TrialDraft, "weighing" | "balance">): WeightEstimate {
  const { weighing, balance } = draft;
  if (weighing === undefined) throw new RangeError("A trial without quiet standing has no weight of its own.");
  return balance !== undefined && balance.uncertainty <= weighing.uncertainty ? balance : weighing;
}

function plain({ newtons, uncertainty }: WeightEstimate): WeightEstimate {
  return { newtons, uncertainty };
}
