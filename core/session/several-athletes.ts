import type { WeightEstimate } from "../events/weigh.ts";
import { type Finding, proseFinding } from "../ground/finding.ts";
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
  const kilograms = (newtons: number): string => `${(newtons / settings.gravity).toFixed(1)} kg`;
  const isAthlete = (draft: TrialDraft): boolean => {
    const own = draft.weighing?.newtons;
    if (massKg === undefined || own === undefined) return false;
    return Math.abs(own / settings.gravity / massKg - 1) <= settings.severalAthletesFraction;
  };
  const said = (draft: TrialDraft): Finding => {
    const own = draft.weighing?.newtons;
    const weighs = own === undefined ? "" : `; this one ${kilograms(own)}`;
    return proseFinding(
      "several-athletes",
      "refusal",
      `Athletes who stood before and after their jumps in this file weigh from ${kilograms(lightest.newtons)} to ${kilograms(heaviest.newtons)}${weighs}: no one person weighs both, so more than one jumped.`,
      "State the body mass of the athlete this session is about (--mass), and only jumps of that mass are used; or record each athlete in a file of their own.",
      { where: `trial ${draft.trial}` },
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
