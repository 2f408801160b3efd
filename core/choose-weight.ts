import type { TrialDraft } from "./draft-trials.ts";
import { poolWeights, type SessionWeight } from "./events/session-weight.ts";
import type { Weighing, WeightEstimate } from "./events/weigh.ts";
import { isSound } from "./events/weigh-trial.ts";
import type { WeightUsed } from "./result.ts";
import type { Settings } from "./settings.ts";

const twoWindows = "quiet standing before and after the jump";

/** What the trials of a session say about body weight together. */
export interface SessionWeighing {
  /** Pooled over at least two weighings that agree. */
  readonly pooled?: SessionWeight;
  /** The surest single weighing. */
  readonly best?: WeightEstimate;
}

/** What a draft says about body weight; small, and free of curves. */
export type WeighedTrial = Pick<TrialDraft, "excluded" | "weighing" | "balance" | "otherFootWeighed">;

/** Body weight from every trial of a session that nobody excluded and that was weighed by itself. */
export function weighSession(drafts: readonly WeighedTrial[], settings: Settings): SessionWeighing {
  const weighings = drafts
    .filter((draft) => draft.excluded === undefined && draft.weighing !== undefined && !draft.otherFootWeighed)
    .map(trialWeight);
  const pooled = poolWeights(weighings, settings);
  const [first] = weighings;
  if (first === undefined) return {};
  const best = weighings.reduce((surest, each) => (each.uncertainty < surest.uncertainty ? each : surest), first);
  return { best: plain(best), ...(pooled === undefined ? {} : { pooled }) };
}

/**
 * The draft without a weighing after the landing that does not hold: on a single leg the other foot may be down, beside
 * the plate or on its own, and then the weighing counts only where it agrees with the session (METHODS §6); a short one
 * that disagrees, with the session or with an entered mass, is no standing.
 */
export function withSoundWeighing(
  draft: TrialDraft,
  session: SessionWeighing,
  enteredMassKg: number | undefined,
  settings: Settings,
): TrialDraft {
  const { weighing, place, limb, otherFootWeighed, prepared } = draft;
  if (weighing === undefined || prepared === undefined || place !== "after the landing") return draft;
  const known = session.pooled ?? (otherFootWeighed ? session.best : undefined);
  const agrees =
    known !== undefined && Math.abs(weighing.newtons / known.newtons - 1) <= settings.weightToleranceSession;
  const holds =
    limb === "both"
      ? known === undefined || isSound(weighing, known, prepared.recording.rateHz, settings)
      : agrees || (known === undefined && !otherFootWeighed);
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
 * The weight a trial is analysed with (METHODS §2): the session's for single-leg trials, otherwise the better of the
 * trial's own estimates; for a trial that starts on an empty plate also the session's, another trial's or an entered
 * mass; for a standing start an entered mass alone, because its velocity needs the standing too. The estimate that is
 * not used is kept beside it.
 * @returns undefined when weight is unknown.
 */
export function chooseWeight(
  draft: TrialDraft,
  session: SessionWeighing,
  enteredMassKg: number | undefined,
  settings: Settings,
): WeightUsed | undefined {
  const { weighing, balance, limb, place } = draft;
  const pooled =
    session.pooled === undefined ? undefined : ({ ...plain(session.pooled), from: "pooled over the session" } as const);
  if (weighing === undefined) {
    const standing = draft.test === "countermovementJump" || draft.test === "squatJump";
    if (!standing && pooled !== undefined) return pooled;
    if (!standing && session.best !== undefined) return { ...session.best, from: "another trial of the session" };
    return enteredWeight(enteredMassKg, settings);
  }
  const { window } = weighing;
  const oneWindow =
    place === "after the landing" ? "quiet standing after the landing" : "quiet standing before the jump";
  const used = trialWeight(draft);
  const from = used === balance ? twoWindows : oneWindow;
  if (limb !== "both" && pooled !== undefined) return { ...pooled, window, other: { ...plain(used), from } };
  const other = used === balance ? weighing : balance;
  return {
    ...plain(used),
    from,
    window,
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
