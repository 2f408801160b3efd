import type { Weighing, WeightEstimate } from "../events/weigh.ts";
import { startsFromStanding } from "../ground/test-kind.ts";
import { trialKey } from "../ground/trial-key.ts";
import type { WeightUsed } from "../result/trial-result.ts";
import type { Settings } from "../settings/settings.ts";
import type { TrialWeightContext } from "../weight/session-weighing.ts";
import type { TrialDraft } from "./trial-draft.ts";

const twoWindows = "quiet standing before and after the jump";

/**
 * The draft without a weighing after the landing that does not hold: on a single leg the other foot may be down, beside
 * the plate or on its own, and then the weighing counts only where it agrees with the session (METHODS §6); a short one
 * that disagrees, with the session or with an entered mass, is no standing.
 */
export function withSoundWeighing(
  draft: TrialDraft,
  session: TrialWeightContext,
  enteredMassKg: number | undefined,
  settings: Settings,
): TrialDraft {
  const { file, trial, weighing, place, otherFootWeighed, prepared } = draft;
  if (weighing === undefined || prepared === undefined || place !== "after the landing") return draft;
  const holds = session.borneOut[trialKey(file.path, trial)] ?? !otherFootWeighed;
  if (holds && !contradictsEntered(weighing, prepared.recording.rateHz, enteredMassKg, settings)) return draft;
  const { weighing: _weighing, still: _still, place: _place, ...rest } = draft;
  return rest;
}

/** True for a short weighing further from an entered mass than that mass may be wrong: the athlete still moves. */
function contradictsEntered(
  { window, newtons }: Weighing,
  rateHz: number,
  enteredMassKg: number | undefined,
  settings: Settings,
): boolean {
  if (enteredMassKg === undefined || window.end - window.start >= settings.weighingSeconds * rateHz) return false;
  return Math.abs(newtons / settings.gravity - enteredMassKg) > settings.weightToleranceEnteredKg;
}

/**
 * The weight a trial is analysed with (METHODS §2): always its own, the better of its estimates, where it has standing
 * of its own. A trial without that starts on an empty plate where the session's other trials may weigh it, else an
 * entered mass; a standing start has an entered mass alone, because its velocity needs the standing too. The estimate
 * that is not used is kept beside it.
 * @returns undefined when weight is unknown.
 */
export function chooseWeight(
  draft: TrialDraft,
  session: TrialWeightContext,
  enteredMassKg: number | undefined,
  settings: Settings,
): WeightUsed | undefined {
  const { file, trial, weighing, balance, place } = draft;
  if (weighing === undefined) {
    const predicted = startsFromStanding(draft.test) ? undefined : session.predictions[trialKey(file.path, trial)];
    if (predicted === undefined) return enteredWeight(enteredMassKg, settings);
    const { newtons, uncertainty, trials, samePlates } = predicted;
    return {
      newtons,
      uncertainty,
      from: samePlates ? "other trials on the same plates" : "other trials on other plates",
      trials,
    };
  }
  const oneWindow =
    place === "after the landing" ? "quiet standing after the landing" : "quiet standing before the jump";
  const used = trialWeight(draft);
  const other = used === balance ? weighing : balance;
  return {
    ...plain(used),
    from: used === balance ? twoWindows : oneWindow,
    window: weighing.window,
    ...(other === undefined ? {} : { other: { ...plain(other), from: used === balance ? oneWindow : twoWindows } }),
  };
}

function enteredWeight(massKg: number | undefined, settings: Settings): WeightUsed | undefined {
  if (massKg === undefined) return undefined;
  const { gravity, enteredMassUncertaintyKg } = settings;
  return { newtons: massKg * gravity, uncertainty: enteredMassUncertaintyKg * gravity, from: "entered mass" };
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
