import type { WeightEstimate } from "../events/weigh.ts";
import { type Finding, finding } from "../ground/finding.ts";
import type { Settings } from "../settings/settings.ts";
import type { TrialDraft } from "./trial-draft.ts";

/**
 * Refuses the trials of one file that no one person can have made: their own standings, each borne out by standing after
 * the jump, weigh differently. Where the athlete's mass is stated, only those are refused that are not of that mass.
 */
export function withSeveralAthletes(
  drafts: readonly TrialDraft[],
  massKg: number | undefined,
  settings: Settings,
): readonly TrialDraft[] {
  const weights = drafts.map((draft) => borneOut(draft, settings));
  const [lightest, heaviest] = [Math.min, Math.max].map((pick) =>
    weights.find((each) => each?.newtons === pick(...weights.flatMap((other) => other?.newtons ?? []))),
  );
  if (lightest === undefined || heaviest === undefined || !differ(lightest, heaviest, settings)) return drafts;
  const kilograms = (newtons: number): number => newtons / settings.gravity;
  const isAthlete = (draft: TrialDraft): boolean => {
    const own = draft.weighing?.newtons;
    if (massKg === undefined || own === undefined) return false;
    return Math.abs(own / settings.gravity / massKg - 1) <= settings.severalAthletesFraction;
  };
  const said = (draft: TrialDraft): Finding => {
    const own = draft.weighing?.newtons;
    return finding(
      "several-athletes",
      "refusal",
      {
        lightestKg: kilograms(lightest.newtons),
        heaviestKg: kilograms(heaviest.newtons),
        ...(own === undefined ? {} : { ownKg: kilograms(own) }),
      },
      { place: { at: "trial", trial: draft.trial }, answers: [{ asks: "massKg" }] },
    );
  };
  return drafts.map((draft) => (isAthlete(draft) ? draft : { ...draft, findings: [...draft.findings, said(draft)] }));
}

/** A weighing that standing after the jump bears out; a hand on a rail or a foot beside the plate does not. */
function borneOut({ weighing, after, balance, heldBefore, otherFootWeighed, place }: TrialDraft, settings: Settings) {
  if (weighing === undefined || heldBefore !== undefined || otherFootWeighed) return undefined;
  if (place === "after the landing" || balance !== undefined) return weighing;
  const agrees =
    after !== undefined && Math.abs(after.newtons / weighing.newtons - 1) <= settings.weightToleranceSession;
  return agrees ? weighing : undefined;
}

function differ(light: WeightEstimate, heavy: WeightEstimate, settings: Settings): boolean {
  const difference = heavy.newtons - light.newtons;
  const joint = settings.severalAthletesSd * Math.hypot(light.uncertainty, heavy.uncertainty);
  return difference > Math.max(joint, settings.severalAthletesFraction * heavy.newtons);
}
